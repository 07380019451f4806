import { useEffect, useState } from 'react';
import type { QuestionName, Questions } from '../workers/messages.ts';
import { useApp } from './store.ts';

interface Answered<A> {
  readonly answer: A | null;
  readonly failure: string | null;
}

/**
 * The worker's answer to a question, asked anew when the question changes. The former answer stays until the new one comes,
 * so that a strip never blinks while it is dragged. A null question asks nothing.
 */
export function useAnswer<N extends QuestionName>(name: N, question: Questions[N]['question'] | null): Answered<Questions[N]['answer']> {
  const session = useApp((state) => state.session);
  const [answered, setAnswered] = useState<Answered<Questions[N]['answer']>>({ answer: null, failure: null });
  const key = question === null ? null : JSON.stringify(question);
  useEffect(() => {
    if (session === null || key === null) return;
    let gone = false;
    session.ask(name, JSON.parse(key) as Questions[N]['question']).then(
      (answer) => { if (!gone && answer !== null) setAnswered({ answer, failure: null }); },
      (error: unknown) => { if (!gone) setAnswered({ answer: null, failure: error instanceof Error ? error.message : String(error) }); },
    );
    return () => { gone = true; };
  }, [session, name, key]);
  return answered;
}
