import { defineRefusals } from '#lib/platform';

export const refuseProcedure = defineRefusals({
  restoration_does_not_fit: { status: 422, title: 'A restoration does not fit together' },
  template_does_not_fit: { status: 422, title: 'The lines of the template do not fit together' },
});
