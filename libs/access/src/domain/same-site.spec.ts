import { describe, expect, it } from '@jest/globals';
import { comesFromElsewhere, type RequestSource } from './same-site.js';

const change = (source: Partial<RequestSource>) =>
  comesFromElsewhere({
    method: 'POST',
    origin: undefined,
    fetchSite: undefined,
    host: 'book.example',
    ...source,
  });

describe('a changing request', () => {
  it.each<Partial<RequestSource>>([
    {},
    { origin: 'https://book.example' },
    { origin: 'https://BOOK.example', host: 'book.example:443' },
    { origin: 'http://[::1]:8080', host: '[::1]:8080' },
    { fetchSite: 'same-origin' },
    { fetchSite: 'none' },
    { method: 'GET', origin: 'https://evil.example', fetchSite: 'cross-site' },
  ])('is ours: %j', (source) => expect(change(source)).toBe(false));

  it.each<Partial<RequestSource>>([
    { origin: 'https://evil.example' },
    { origin: 'https://book.example.evil.example' },
    { origin: 'https://sub.book.example', fetchSite: 'same-site' },
    { origin: 'https://book.example:8443' },
    { origin: 'null' },
    { origin: '' },
    { fetchSite: 'cross-site' },
    { method: 'DELETE', origin: 'https://evil.example' },
  ])('comes from elsewhere: %j', (source) => expect(change(source)).toBe(true));
});
