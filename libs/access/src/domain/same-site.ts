export interface RequestSource {
  readonly method: string;
  readonly origin: string | undefined;
  readonly fetchSite: string | undefined;
  readonly host: string;
}

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS']);

function withoutDefaultPort(host: string): string {
  return host.toLowerCase().replace(/:(80|443)$/, '');
}

/**
 * Whether a request that a browser may have sent on its own (it carries a cookie) comes from a page
 * of another site. Browsers name the page's origin with every changing request; programs name none.
 */
export function comesFromElsewhere(source: RequestSource): boolean {
  if (SAFE_METHODS.has(source.method)) return false;
  if (source.fetchSite === 'cross-site') return true;
  if (source.origin === undefined) return false;
  if (!URL.canParse(source.origin)) return true;
  return withoutDefaultPort(new URL(source.origin).host) !== withoutDefaultPort(source.host);
}
