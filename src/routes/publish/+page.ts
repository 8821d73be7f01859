import { takeFromShelf } from '$editor/shelf/takeFromShelf.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ url }) => ({ taken: await takeFromShelf(url) });
