import { parseSection } from './arguments.ts';
import { main } from './main.ts';

await main(parseSection);
