import { Readable } from 'node:stream';
import type { Session } from '../operations/shell.ts';
import { pageFile } from '../page-files.ts';
import { ropeBytes } from '../rope-bytes.ts';
import { SECURITY_HEADERS } from '../security-policy.ts';
import { isOurAddress } from './window-policy.ts';

/** Answers the page's own scheme: its built files, and bytes of files in opened folders by token. */
export async function answerPage(request: { readonly url: string; readonly method: string }, session: Session, pageRoot: string): Promise<Response> {
  if (!isOurAddress(request.url) || request.method !== 'GET') return new Response('not served', { status: 403, headers: SECURITY_HEADERS });
  const { pathname } = new URL(request.url);
  if (pathname.startsWith('/bytes/')) {
    const found = await ropeBytes(session, pathname);
    if (found === null) return new Response('There is no such file in an opened folder', { status: 404, headers: SECURITY_HEADERS });
    const body = found.body instanceof Uint8Array ? found.body : Readable.toWeb(Readable.from(found.body));
    // Node's and the browser's stream types differ in name only.
    return new Response(body as ConstructorParameters<typeof Response>[0], { headers: { ...SECURITY_HEADERS, 'content-type': found.type } });
  }
  const file = await pageFile(pageRoot, pathname);
  if (file === null) return new Response('There is no such file', { status: 404, headers: SECURITY_HEADERS });
  return new Response(file.bytes as Uint8Array<ArrayBuffer>, { headers: { ...SECURITY_HEADERS, 'content-type': file.type } });
}
