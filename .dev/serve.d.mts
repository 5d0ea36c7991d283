/** Bounds on what one client can take up. */
export interface ServeLimits {
  readonly headerBytes: number;
  /** Longest time until a request's headers, and a whole request, must be there. */
  readonly headersMs: number;
  readonly requestMs: number;
  /** A connection on which nothing has moved for so long is ended. */
  readonly idleMs: number;
  readonly connections: number;
}
/** Serves a folder on this machine only, under the page's security headers; port 0 takes any free one. */
export const serveFolder: (
  folder: string,
  port: number,
  limits?: Partial<ServeLimits>,
) => Promise<{ readonly port: number; readonly address: string; readonly close: () => Promise<void> }>;
/** The policy sent with every answer. */
export const CONTENT_SECURITY_POLICY: string;
