import { useMemo, useRef, useState } from 'preact/hooks';
import { isoDay } from '../../core/day.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Combobox } from '../parts/combobox.tsx';
import { ErrorSummary } from '../parts/error-summary.tsx';
import { DateField, NumberField, TextField } from '../parts/fields.tsx';
import { Disclosure } from '../parts/layout.tsx';
import { afterLogging, type LogDraft, type TextField as TextFieldName, withDate, withText } from './draft.ts';
import { itemOptions, jobOptions, offeredJob, treatmentOptions } from './log-options.ts';
import { changeDraft, enterField, leaveField, leftFields, logDraft } from './log-state.ts';
import { workOut } from './log-work.ts';
import { PlanView } from './plan-view.tsx';

/** The form for a treatment: scan or choose, how much, Enter. What it takes from stock stands below while she types. */
export function LogForm({ books }: { readonly books: Books }) {
  const pane = usePane();
  const { studio } = books.ledger;
  const offered = useMemo(() => offeredJob(studio), [studio]);
  const stored = logDraft.value;
  const draft: LogDraft = stored.job === null ? { ...stored, job: offered } : stored;
  const job = draft.job ?? '';
  const work = useMemo(
    () => workOut({ ...stored, job }, studio, books.today, (request) => pane.session.planTreatment(request)),
    [stored, job, books],
  );
  const options = useMemo(
    () => ({
      jobs: jobOptions(studio),
      items: itemOptions(studio, job),
      treatments: treatmentOptions(studio, job),
    }),
    [studio, job],
  );
  const [attempt, setAttempt] = useState(0);
  const [isMoved, setMoved] = useState(false);
  const sending = useRef(false);
  const fields = { item: useField(), treatment: useField(), extent: useField() };
  const send = useRef<HTMLButtonElement>(null);
  // Once open it stays so: it must not close while she clears the last thing in it.
  const moreOpen = useRef(hasMore(draft));

  const change = (changed: (now: LogDraft) => LogDraft): void => {
    setMoved(false);
    changeDraft(offered, changed);
  };
  const text = (field: TextFieldName) => ({
    id: fieldId(field),
    onInput: (typed: string) => change((now) => withText(now, field, typed)),
    onLeave: () => leaveField(field),
    error: errorOf(field),
  });
  const list = (field: TextFieldName) => {
    const { onInput, ...rest } = text(field);
    const onText = (typed: string): void => {
      enterField(field);
      onInput(typed);
    };
    return { ...rest, onText };
  };
  function errorOf(field: string): string | null {
    const problem = work.problems.find((each) => each.field === field);
    if (problem === undefined) return null;
    return attempt > 0 || (!problem.isBlank && leftFields.value.has(field)) ? problem.message : null;
  }

  /** The id of a field; those of the lines go by the place of the line. */
  function fieldId(field: string): string {
    const [part = '', of] = field.split(' of ', 2);
    if (of === undefined) return `log-${part}`;
    const place = work.lines.findIndex((line) => field.endsWith(` of ${line.draft.of}`));
    return `log-line-${place}-${part.replaceAll(' ', '-')}`;
  }

  const submit = async (): Promise<void> => {
    if (sending.current || books.readingOnly !== null) return;
    setAttempt(attempt + 1);
    const { asked } = work;
    if (work.problems.length > 0 || asked === null) return;
    sending.current = true;
    const done = await pane.act(() => pane.session.log(asked.request, asked.plan));
    sending.current = false;
    setMoved(done.kind === 'look again');
    if (done.kind !== 'done') return;
    setAttempt(0);
    leftFields.value = new Set();
    changeDraft(null, afterLogging);
    fields.treatment.current?.focus();
  };

  moreOpen.current ||= errorOf('minutes') !== null;
  const errors = [
    ...work.problems.map(({ field, message }) => ({ field: fieldId(field), message })),
    ...(work.refusal === null ? [] : [{ field: fieldId('treatment'), message: work.refusal }]),
  ];
  return (
    <form
      class="form log-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <ErrorSummary errors={attempt > 0 ? errors : []} attempt={attempt} />
      <Combobox
        {...list('job')}
        label="Job"
        listLabel="Jobs"
        text={job}
        options={options.jobs}
        focusHome={job === ''}
        hint={jobHint(options.jobs, job)}
        onTake={(option, by) => {
          if (by !== 'tab')
            focusNext(itemOptions(studio, option.value).length > 0 ? fields.item : fields.treatment);
        }}
      />
      {(options.items.length > 0 || draft.item !== '') && (
        <Combobox
          {...list('item')}
          label="Item"
          optional
          listLabel="Items of this job"
          text={draft.item}
          options={options.items}
          fieldRef={fields.item}
          onTake={(_, by) => {
            if (by !== 'tab') focusNext(fields.treatment);
          }}
        />
      )}
      <Combobox
        {...list('treatment')}
        label="Treatment"
        listLabel="Treatments"
        text={draft.treatment}
        options={options.treatments}
        fieldRef={fields.treatment}
        focusHome={job !== ''}
        onTake={(_, by) => {
          if (by !== 'tab') focusNext(fields.extent);
        }}
      />
      <div class="pair">
        <NumberField
          {...text('extent')}
          label="How much"
          value={draft.extent}
          fieldRef={fields.extent}
          suffix={work.treatment?.record.extentUnit ?? ''}
        />
        <DateField
          id={fieldId('date')}
          label="Date"
          value={draft.date ?? isoDay(books.today)}
          onInput={(typed) => change((now) => withDate(now, typed))}
          error={errorOf('date')}
        />
      </div>
      <Disclosure summary="More: minutes, by, notes" open={moreOpen.current}>
        <div class="stack">
          <div class="pair">
            <NumberField {...text('minutes')} label="Minutes" optional value={draft.minutes} suffix="min" />
            <TextField {...text('by')} label="By" optional value={draft.by} />
          </div>
          <TextField {...text('notes')} label="Notes" optional value={draft.notes} />
        </div>
      </Disclosure>
      <PlanView
        books={books}
        work={work}
        isMoved={isMoved}
        change={change}
        errorOf={errorOf}
        fieldId={fieldId}
        sendRef={send}
      />
    </form>
  );
}

function useField() {
  return useRef<HTMLInputElement>(null);
}

/**
 * Moves the focus to the next field: at once, so that what is typed or scanned next lands there; only a field that
 * comes with what was taken has to be waited for.
 */
function focusNext(field: { readonly current: HTMLInputElement | null }): void {
  const focus = (): void => {
    field.current?.focus();
    field.current?.select();
  };
  if (field.current === null) requestAnimationFrame(focus);
  else focus();
}

function jobHint(options: ReturnType<typeof jobOptions>, job: string): string | undefined {
  return options.find(({ value }) => value === job)?.detail;
}

function hasMore({ minutes, by, notes }: LogDraft): boolean {
  return [minutes, by, notes].some((typed) => typed.trim() !== '');
}
