/** Path that receives photographs shared from another app. */
export const SHARE_PATH = '/share';
/** Form field that holds them; the manifest names it too. */
export const SHARE_FIELD = 'photographs';
/** Cache in which they wait until a page has stored them. */
export const SHARED = 'shared-photographs';
/** Where the painter is redirected afterwards. */
const TO = '/#/walk';

/** Caches the shared photographs, then redirects to the app; also if there are none. */
export async function takeIn({ request }: { readonly request: Request }): Promise<Response> {
  try {
    const form = await request.formData();
    const files = form.getAll(SHARE_FIELD).filter((one) => one instanceof File);
    const waiting = await caches.open(SHARED);
    for (const file of files) {
      const headers = {
        'Content-Type': file.type || 'application/octet-stream',
        'X-Name': encodeURIComponent(file.name),
      };
      await waiting.put(`/shared/${crypto.randomUUID()}`, new Response(file, { headers }));
    }
  } catch {
    // An unreadable form or a full disk: the painter can still choose the photograph by hand.
  }
  return Response.redirect(TO, 303);
}
