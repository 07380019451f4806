/** Small shapes that say the same as the words beside them, so that no meaning hangs on colour alone. */
export type GlyphName = 'new' | 'growing' | 'stable' | 'receding' | 'not-found' | 'not-inspected' | 'zone' | 'note' | 'photo' | 'landmark' | 'caution';

const PATHS: Record<GlyphName, string> = {
  new: 'M8 1.5 14.5 8 8 14.5 1.5 8Z',
  growing: 'M8 1.5 15 14H1Z',
  stable: 'M8 2.5a5.5 5.5 0 1 0 .01 0Z',
  receding: 'M1 2h14L8 14.5ZM4.4 4 8 10.5 11.6 4Z',
  'not-found': 'M8 2a6 6 0 1 0 .01 0ZM8 4a4 4 0 1 1-.01 0Z',
  'not-inspected': 'M1 5 5 1h3L1 8Zm0 6L11 1h3L1 14ZM3 15 15 3v3L6 15Zm6 0 6-6v3l-3 3Z',
  zone: 'M1 5h14v6H1Z',
  note: 'M2 2h12v9H8l-4 3v-3H2ZM4 5v1h8V5Zm0 2.5v1h6v-1Z',
  photo: 'M1 4h4l1-2h4l1 2h4v10H1Zm7 1.5a3 3 0 1 0 .01 0Z',
  landmark: 'M7 1h2v9l3 5H4l3-5Z',
  caution: 'M8 1 15.5 14.5H.5ZM7.2 6v4.5h1.6V6Zm0 5.5V13h1.6v-1.5Z',
};

export function Glyph({ name, size = 12 }: { readonly name: GlyphName; readonly size?: number }) {
  return <svg className={`glyph glyph-${name}`} width={size} height={size} viewBox="0 0 16 16" aria-hidden="true"><path fillRule="evenodd" d={PATHS[name]} /></svg>;
}
