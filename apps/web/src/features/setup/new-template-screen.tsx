import { getRouteApi, Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { PageHead } from '../../ui/page-head.js';
import parts from './parts.module.css';
import { TemplateEditor } from './template-editor.js';

const route = getRouteApi('/in/setup/templates/new');

export function NewTemplateScreen() {
  const w = useText().setupTemplates;
  const state = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <>
      <Link className={`${parts.back ?? ''} tb-screen-only`} to="/setup/templates" search={{}}>
        {w.back}
      </Link>
      <PageHead title={w.newTitle} lead={w.newLead} />
      <TemplateEditor
        example={{
          state,
          change: (part) =>
            void navigate({
              search: (old) => ({ ...old, ...part }),
              replace: true,
              resetScroll: false,
            }),
        }}
        onSaved={({ id }) =>
          void navigate({
            to: '/setup/templates/$templateId',
            params: { templateId: id },
            search: state,
          })
        }
      />
      <Caution />
    </>
  );
}
