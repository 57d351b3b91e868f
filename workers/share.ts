/** Photographs that another app handed over wait here until a page of ours has kept them. */
export const SHARE_PATH = '/share';
/** The field of the form in which they come: the manifest names it too. */
export const SHARE_FIELD = 'photographs';
export const SHARED = 'shared-photographs';
/** Where the painter is taken then. */
const TO = '/#/walk';

/** Keeps what was handed over, then shows the app; with nothing in it the app is all that is shown. */
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
    // A form that cannot be read, or a full disk: the painter can still choose the photograph by hand.
  }
  return Response.redirect(TO, 303);
}
