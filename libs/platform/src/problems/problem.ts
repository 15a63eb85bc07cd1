import type { FieldError } from './refused.js';

/** RFC 9457 problem details, with our stable code, the request's id and the fields at fault. */
export interface Problem {
  type: string;
  title: string;
  status: number;
  detail: string;
  code: string;
  instance: string;
  requestId: string;
  errors?: readonly FieldError[];
}

export const PROBLEM_MEDIA_TYPE = 'application/problem+json';

export function problemType(code: string): string {
  return `urn:traybook:problem:${code.replaceAll('_', '-')}`;
}
