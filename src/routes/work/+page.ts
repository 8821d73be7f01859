import { shelfOfDevice } from '$editor/shelf/shelfOfDevice.ts';
import { keepFault } from '$keep/keepFault.ts';
import type { Taken } from '$keep/shelf.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = async ({ url }): Promise<{ id: string; taken: Taken | { kind: 'trouble'; words: string } }> => {
  const id = url.searchParams.get('pattern') ?? '';
  try {
    return { id, taken: await shelfOfDevice().take(id) };
  } catch (error) {
    return { id, taken: { kind: 'trouble', words: keepFault(error).words } };
  }
};
