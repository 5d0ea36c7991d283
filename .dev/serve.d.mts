/** Serves a folder on this machine only, under the page's security headers; port 0 takes any free one. */
export const serveFolder: (
  folder: string,
  port: number,
) => Promise<{ readonly port: number; readonly address: string; readonly close: () => Promise<void> }>;
/** The policy sent with every answer. */
export const CONTENT_SECURITY_POLICY: string;
