/** Names of the two messages between preload and main. */
export const CALL_CHANNEL = 'strandbook:call';
export const DROP_CHANNEL = 'strandbook:drop';
