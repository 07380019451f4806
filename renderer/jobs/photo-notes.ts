import type { Assessment } from '../../analysis/assessment/schema.ts';
import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import { figure } from '../text/format.ts';

/** Photos that have a place and no note of their own, as the notes that the lane and its sheet show. */
export function photoNotes(photos: Assessment['photos']): VisualNote[] {
  return photos.flatMap((each) => (each.position_m === null || each.inspection === null ? [] : [{
    id: `photo ${each.file}`, inspection: each.inspection, from: each.position_m, to: each.position_m, kind: 'photo' as const, kindAsWritten: 'photo', value: null, unit: '', severity: '',
    photo: each.file, remark: `${each.reason}${each.within_m === null ? '' : `, within ${figure(each.within_m)} m`}`,
  }]));
}
