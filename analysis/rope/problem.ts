/** A fault in the input: what happened and what to do. Row 1 is the first row of the file. */
export interface Problem {
  readonly file: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly what: string;
  readonly remedy: string;
}

/** Thrown when the input cannot be used at all; every problem found is in it, not only the first. */
export class UnusableInput extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(formatProblem).join('\n'));
    this.name = 'UnusableInput';
    this.problems = problems;
  }
}

/** Thrown out of a checkpoint when the user has asked to stop. */
export class Cancelled extends Error {
  constructor() {
    super('cancelled');
    this.name = 'Cancelled';
  }
}

/** One line: file, line, column, what is wrong, what to do. */
export function formatProblem(problem: Problem): string {
  const line = problem.line === null ? '' : `, line ${problem.line}`;
  const column = problem.column === null ? '' : `, column ${problem.column}`;
  return `${problem.file}${line}${column}: ${problem.what}; ${problem.remedy}`.replace(/\s*[\r\n]+\s*/g, ' ');
}
