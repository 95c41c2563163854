import { fileURLToPath } from 'node:url';
import type { ObjectStore } from './objects.ts';

/**
 * The object store at an address: `memory:`, `file:///folder`, `s3://bucket` or `s3://bucket/prefix`. Each adapter is
 * loaded only when it is asked for, so a handler carries none that it does not use.
 *
 * @throws RangeError for any other address
 */
export async function openObjectStore(address: string): Promise<ObjectStore> {
  const url = URL.canParse(address) ? new URL(address) : null;
  switch (url?.protocol) {
    case 'memory:':
      return (await import('./memory.ts')).memoryObjects();
    case 'file:':
      return (await import('./file.ts')).fileObjects(fileURLToPath(url));
    case 's3:': {
      const prefix = decodeURIComponent(url.pathname).replace(/^\/+|\/+$/g, '');
      return (await import('./s3.ts')).s3Objects(url.hostname, prefix === '' ? '' : `${prefix}/`);
    }
    default:
      throw new RangeError(
        `not the address of an object store: ${address}; use file:///folder or s3://bucket/prefix`,
      );
  }
}
