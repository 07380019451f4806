import type { RopeRecord } from '../../rope/record.ts';

/** The file of the rope folder that a note means by `photo`: by its full name, in the inspection's photo folder, or by its last part. */
export function photoFile(photo: string, inspection: string, record: Pick<RopeRecord, 'inspections'>, files: readonly { readonly name: string }[]): string | null {
  const wanted = photo.replace(/\\/g, '/').replace(/^\.\//, '');
  const folder = photoFolder(record.inspections.find((each) => each.id === inspection)?.photos);
  const names = files.map((each) => each.name);
  const inFolder = folder === null ? null : `${folder}/${wanted}`;
  return names.find((name) => name === wanted)
    ?? names.find((name) => name === inFolder)
    ?? names.find((name) => name.endsWith(`/${wanted}`))
    ?? null;
}

/** Name of a photo folder as file names begin with it, without a bar at its end; null where none is named. */
export function photoFolder(named: string | undefined): string | null {
  return named === undefined ? null : named.replace(/\\/g, '/').replace(/^\.\//, '').replace(/\/+$/, '');
}
