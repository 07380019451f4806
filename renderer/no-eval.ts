import { z } from 'zod';

/** The page's policy forbids making code from text. Zod would try it once to find that out: it need not. To be imported before any schema. */
z.config({ jitless: true });
