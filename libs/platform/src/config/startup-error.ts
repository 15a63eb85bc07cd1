/** Why the service cannot start, as one sentence for whoever started it. It is shown without a stack. */
export class StartupError extends Error {
  override readonly name = 'StartupError';
}
