/**
 * The page's content security policy, the same in both shells. Only our own files run; nothing is loaded from elsewhere.
 * Inline styles are allowed because the chart library injects its style rules; scripts are not.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'", "script-src 'self'", "worker-src 'self'", "style-src 'self' 'unsafe-inline'", "img-src 'self' blob: data:", "font-src 'self'",
  "connect-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'none'",
].join('; ');

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_SECURITY_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=()',
};
