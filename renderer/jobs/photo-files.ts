import type { RopeRecord } from '../../analysis/rope/record.ts';

/** The file of the rope folder that a note means by `photo`: by its full name, in the inspection's photo folder, or by its last part. */
export function photoFile(photo: string, inspection: string, record: Pick<RopeRecord, 'inspections'>, files: readonly { readonly name: string }[]): string | null {
  const wanted = photo.replace(/\\/g, '/').replace(/^\.\//, '');
  const folder = record.inspections.find((each) => each.id === inspection)?.photos?.replace(/\/$/, '');
  const names = files.map((each) => each.name);
  const inFolder = folder === undefined ? null : `${folder}/${wanted}`;
  return names.find((name) => name === wanted)
    ?? names.find((name) => name === inFolder)
    ?? names.find((name) => name.endsWith(`/${wanted}`))
    ?? null;
}
