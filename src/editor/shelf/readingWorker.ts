import { reading, type ReadingAsked } from './reading.ts';

addEventListener('message', ({ data }: MessageEvent<ReadingAsked>) => postMessage(reading(data)));
