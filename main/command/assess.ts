import { parseAssess } from './arguments.ts';
import { main } from './main.ts';

await main(parseAssess);
