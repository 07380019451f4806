/**
 * The one place where long work reports and may be stopped. It resolves when the work may go on
 * (giving the host a turn to deliver a cancel) and rejects with Cancelled when it may not.
 * `share` runs from 0 to 1 over the whole job.
 */
export type Checkpoint = (stage: string, share: number) => Promise<void>;

export const noCheckpoint: Checkpoint = () => Promise.resolve();

/** A checkpoint for one stage of a job: its own share 0..1 becomes `from`..`to` of the whole. */
export function stageOf(checkpoint: Checkpoint, stage: string, from: number, to: number): Checkpoint {
  return (detail, share) => checkpoint(detail === '' ? stage : `${stage}: ${detail}`, from + (to - from) * Math.min(1, Math.max(0, share)));
}
