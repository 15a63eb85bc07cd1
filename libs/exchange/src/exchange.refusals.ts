import { defineRefusals } from '#lib/platform';

export const refuseExchange = defineRefusals({
  file_unreadable: { status: 422, title: 'The file cannot be read' },
  import_has_errors: { status: 422, title: 'Nothing was brought in, because rows have errors' },
  not_a_file: { status: 415, title: 'Send the file itself as the body' },
});
