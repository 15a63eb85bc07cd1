import { useText } from '../../text/text-provider.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Section } from '../../ui/section.js';
import { PlanFields, WishFields } from './plan-fields.js';
import css from './question-form.module.css';
import { RestorationRows } from './restoration-rows.js';
import type { Question } from './use-question.js';

/** What is planned, for whom, under which plan, and what one wants to know. */
export function QuestionForm({ question }: { readonly question: Question }) {
  const w = useText().quotes;
  return (
    <div className="tb-screen-only">
      <Form form={question.form}>
        <Section title={w.planned} hint={w.reasonDecides}>
          <RestorationRows question={question} />
        </Section>
        <div className={css.halves}>
          <Section title={w.patient} hint={w.patientHint}>
            <PlanFields question={question} />
          </Section>
          <Section title={w.wishes} hint={w.wishesHint}>
            <WishFields question={question} />
          </Section>
        </div>
        <FormActions>
          <SubmitButton form={question.form}>{w.compare}</SubmitButton>
        </FormActions>
      </Form>
    </div>
  );
}
