/** One line that is overwritten while work goes on; nothing at all where the stream is not a terminal. */
export function showProgress(stream: NodeJS.WriteStream): { update(stage: string, share: number): void; clear(): void } {
  let shownAt = 0;
  return {
    update(stage, share) {
      if (!stream.isTTY || Date.now() - shownAt < 100) return;
      shownAt = Date.now();
      stream.write(`\r\x1b[2K${String(Math.round(share * 100)).padStart(3)} %  ${stage.slice(0, Math.max(10, (stream.columns ?? 80) - 8))}`);
    },
    clear() {
      if (stream.isTTY && shownAt > 0) stream.write('\r\x1b[2K');
    },
  };
}
