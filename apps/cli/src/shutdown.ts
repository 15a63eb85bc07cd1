type Step = () => Promise<void>;

/** Thrown where work in hand can be left off because somebody asked for the end. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
}

// npm passes on a Ctrl-C that the terminal has sent here already: that is not a second one.
const ECHO_MS = 1000;

/** Ends what was started, in the opposite order, when it is asked to or when something fails. */
export class Shutdown {
  private readonly steps: Step[] = [];
  private askedAt: number | undefined;
  private announce: () => void = () => undefined;
  /** Resolves when a signal asks for the end. */
  readonly asked = new Promise<void>((resolve) => {
    this.announce = resolve;
  });

  /** The first signal asks for an orderly end; another one, a while later, ends at once. */
  listen(): void {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      process.on(signal, () => {
        if (this.askedAt === undefined) {
          this.askedAt = Date.now();
          this.announce();
        } else if (Date.now() - this.askedAt > ECHO_MS) {
          process.exit(130);
        }
      });
    }
  }

  later(step: Step): void {
    this.steps.push(step);
  }

  throwIfAsked(): void {
    if (this.askedAt !== undefined) throw new Stopped('Asked to stop');
  }

  async run(): Promise<void> {
    for (let step = this.steps.pop(); step; step = this.steps.pop()) await step();
  }
}
