import { randomFrom } from '../signal/random.ts';
import type { Picture } from './png.ts';
import { writeWords } from './words.ts';

/** What a drawn stretch of rope shows. */
export interface Scene {
  readonly name: string;
  readonly caption: string;
  readonly brokenWires: number;
  /** 0 bright, 1 brown all over. */
  readonly rust: number;
  /** 0 round wires, 1 flats on the crowns. */
  readonly wear: number;
}

const WIDTH = 240;
const HEIGHT = 150;
const AXIS = 70;
const RADIUS = 36;

/** A simple drawing of a rope, marked SYNTHETIC in the picture itself. */
export function drawRope(scene: Scene): Picture {
  const picture: Picture = { width: WIDTH, height: HEIGHT, pixels: new Uint8Array(WIDTH * HEIGHT * 3) };
  const random = randomFrom(`photo/${scene.name}`);
  const stains = Array.from({ length: Math.round(60 * scene.rust) }, () => ({ x: random.between(0, WIDTH), y: AXIS + random.between(-RADIUS, RADIUS), size: random.between(2, 11) }));
  for (let y = 0; y < HEIGHT; y += 1) {
    for (let x = 0; x < WIDTH; x += 1) paint(picture, x, y, colourAt(scene, stains, x, y));
  }
  for (let i = 0; i < scene.brokenWires; i += 1) drawBreak(picture, 30 + random.between(0, WIDTH - 60), AXIS + random.between(-0.7, 0.7) * RADIUS);
  writeWords(picture, 6, 6, 'SYNTHETIC', 2, [150, 20, 20]);
  writeWords(picture, 6, HEIGHT - 22, scene.caption, 2, [20, 20, 20]);
  return picture;
}

type Colour = readonly [number, number, number];

function paint(picture: Picture, x: number, y: number, colour: Colour): void {
  if (x < 0 || y < 0 || x >= picture.width || y >= picture.height) return;
  picture.pixels.set(colour, (Math.floor(y) * picture.width + Math.floor(x)) * 3);
}

/** Six strands seen as slanting ridges, each of several wires; darker towards the edges of the round rope. */
function colourAt(scene: Scene, stains: readonly { x: number; y: number; size: number }[], x: number, y: number): Colour {
  const across = (y - AXIS) / RADIUS;
  if (Math.abs(across) >= 1) return [226, 228, 222];
  const round = Math.sqrt(1 - across * across);
  const turn = x / 46 + Math.asin(across) * 0.95;
  const strand = Math.abs(Math.sin(Math.PI * turn));
  const wire = Math.abs(Math.sin(Math.PI * (x / 7 - Math.asin(across) * 2.2)));
  const ridge = scene.wear > 0 && strand > 1 - 0.45 * scene.wear ? 1.25 : 0.55 + 0.45 * strand * (0.7 + 0.3 * wire);
  const light = Math.min(1, (0.35 + 0.65 * round) * ridge);
  const brown = Math.min(1, stains.reduce((sum, stain) => sum + Math.max(0, 1 - Math.hypot(x - stain.x, y - stain.y) / stain.size), 0));
  const mix = (steel: number, rust: number) => Math.round(8 * Math.round((light * (steel + brown * (rust - steel))) / 8));
  return [mix(190, 150), mix(196, 88), mix(200, 44)];
}

function drawBreak(picture: Picture, x: number, y: number): void {
  for (let i = -9; i <= 9; i += 1) {
    const dark = Math.abs(i) < 4;
    const lift = dark ? 0 : -Math.abs(i) / 3;
    for (let j = 0; j < 2; j += 1) paint(picture, Math.round(x) + i, Math.round(y + lift) + j, dark ? [20, 20, 22] : [240, 240, 236]);
  }
}
