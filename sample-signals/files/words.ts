import type { Picture } from './png.ts';

/** Letters of five by seven points, one text of seven rows each; only those that the pictures need. */
const ROWS: Readonly<Record<string, string>> = {
  A: '01110 10001 10001 11111 10001 10001 10001', B: '11110 10001 10001 11110 10001 10001 11110', C: '01111 10000 10000 10000 10000 10000 01111',
  D: '11110 10001 10001 10001 10001 10001 11110', E: '11111 10000 10000 11110 10000 10000 11111', H: '10001 10001 10001 11111 10001 10001 10001',
  I: '01110 00100 00100 00100 00100 00100 01110', M: '10001 11011 10101 10101 10001 10001 10001', N: '10001 11001 10101 10011 10001 10001 10001',
  O: '01110 10001 10001 10001 10001 10001 01110', S: '01111 10000 10000 01110 00001 00001 11110', T: '11111 00100 00100 00100 00100 00100 00100',
  Y: '10001 10001 01010 00100 00100 00100 00100', '.': '00000 00000 00000 00000 00000 01100 01100', '-': '00000 00000 00000 11111 00000 00000 00000', ' ': '00000 00000 00000 00000 00000 00000 00000',
  0: '01110 10001 10011 10101 11001 10001 01110', 1: '00100 01100 00100 00100 00100 00100 01110', 2: '01110 10001 00001 00010 00100 01000 11111', 3: '11110 00001 00001 01110 00001 00001 11110',
  4: '00010 00110 01010 10010 11111 00010 00010', 5: '11111 10000 11110 00001 00001 10001 01110', 6: '01110 10000 10000 11110 10001 10001 01110', 7: '11111 00001 00010 00100 01000 01000 01000',
  8: '01110 10001 10001 01110 10001 10001 01110', 9: '01110 10001 10001 01111 00001 00001 01110',
};

/** Writes capital letters and digits at a corner (x, y), each point `size` pixels wide. A letter that is not drawn is left blank. */
export function writeWords(picture: Picture, x: number, y: number, words: string, size: number, colour: readonly [number, number, number]): void {
  [...words].forEach((letter, index) => {
    (ROWS[letter] ?? ROWS[' ']).split(' ').forEach((row, down) => {
      [...row].forEach((point, along) => {
        if (point !== '1') return;
        for (let j = 0; j < size; j += 1) {
          for (let i = 0; i < size; i += 1) {
            const left = x + (index * 6 + along) * size + i;
            const top = y + down * size + j;
            if (left < picture.width && top < picture.height) picture.pixels.set(colour, (top * picture.width + left) * 3);
          }
        }
      });
    });
  });
}
