import type { Plugin } from 'vite';
import { CONTENT_SECURITY_POLICY } from './content-security-policy.ts';

/**
 * Puts the content security policy into the built page, before everything that it rules. The development server
 * works with inline styles and a socket, so its pages are without.
 */
export function policyPlugin(): Plugin {
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}
