import { useMemo, useRef, useState } from 'preact/hooks';
import { planBatch } from '../../actions/make-batch.ts';
import { isoDay } from '../../core/day.ts';
import { roundQuantity } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import type { Books } from '../../session/session-state.ts';
import { focusField } from '../focus.ts';
import { enterField, leaveField, leftFields } from '../log/log-state.ts';
import { usePane } from '../pane-context.ts';
import { Combobox } from '../parts/combobox.tsx';
import { ErrorSummary } from '../parts/error-summary.tsx';
import { DateField, NumberField, SelectField } from '../parts/fields.tsx';
import { lotName } from '../route.ts';
import { BatchView } from './batch-view.tsx';
import { afterMaking, isPoured, type MakeDraft, type MakeText, withMakeText } from './make-draft.ts';
import { makeIt } from './make-it.ts';
import { placeOptions, recipeMeant, recipeOptions, unitOptions, usualPlace } from './make-options.ts';
import { backToWaiting, changeMake, lastMade, makeDraft } from './make-state.ts';
import { workOutBatch } from './make-work.ts';

/** The form for a batch: which recipe, how much, Enter. What it takes from stock stands below while she types. */
export function MakeForm({ books }: { readonly books: Books }) {
  const pane = usePane();
  const { ledger, today, snapshot } = books;
  const { studio } = ledger;
  const draft = makeDraft.value;
  const work = useMemo(
    () =>
      workOutBatch(draft, {
        ledger,
        today,
        planBatch: (request) => planBatch(snapshot, request, today),
        planTreatment: (request) => pane.session.planTreatment(request),
      }),
    [draft, books],
  );
  const recipes = useMemo(() => recipeOptions(studio), [studio]);
  const [attempt, setAttempt] = useState(0);
  const [isMoved, setMoved] = useState(false);
  const sending = useRef(false);
  const recipeField = useRef<HTMLInputElement>(null);

  const change = (changed: (now: MakeDraft) => MakeDraft): void => {
    setMoved(false);
    changeMake(changed);
  };
  const field = (name: string) => ({
    id: fieldId(name),
    error: errorOf(name),
    onLeave: () => leaveField(fieldId(name)),
  });
  const input = (name: MakeText) => (typed: string) => {
    enterField(fieldId(name));
    change((now) => withMakeText(now, name, typed));
  };
  function errorOf(name: string): string | null {
    const problem = work.problems.find((each) => each.field === name);
    if (problem === undefined) return null;
    // The fields of a line tell by their own names that they were left.
    const isLeft = leftFields.value.has(fieldId(name)) || leftFields.value.has(name);
    return attempt > 0 || (!problem.isBlank && isLeft) ? problem.message : null;
  }

  /** The id of a field; those of the lines go by the place of the line. */
  function fieldId(name: string): string {
    const [part = '', of] = name.split(' of ', 2);
    if (of === undefined) return `make-${part}`;
    const place = work.lines.findIndex((line) => name.endsWith(` of ${line.draft.of}`));
    return `make-line-${place}-${part.replaceAll(' ', '-')}`;
  }

  const toAmount = (): void => focusField(fieldId('amount'));

  /** Enter behind the code on a jar, or behind a material that no recipe is called: the recipe by which it is made. */
  const onCode = {
    onKeyDown: (event: KeyboardEvent): void => {
      const { target, key } = event;
      if (key !== 'Enter' || !(target instanceof HTMLInputElement) || target.id !== fieldId('recipe')) return;
      if (studio.recipesByKey.has(keyOf(target.value))) return;
      const meant = recipeMeant(studio, target.value);
      if (meant === null) return;
      event.preventDefault();
      change((now) => withMakeText(now, 'recipe', meant.name));
      toAmount();
    },
  };

  const submit = async (): Promise<void> => {
    if (sending.current || books.readingOnly !== null) return;
    setAttempt(attempt + 1);
    const { asked, besides } = work;
    if (work.problems.length > 0 || work.refusal !== null || asked === null) return;
    sending.current = true;
    const making = makeIt(pane.session, { ...asked, besides });
    const done = await pane.act(async () => (await making).done);
    sending.current = false;
    setMoved(done.kind === 'look again');
    if (done.kind !== 'done') return;
    setAttempt(0);
    leftFields.value = new Set();
    const { lot } = await making;
    lastMade.value = lot === null ? null : lotName(lot);
    if (!backToWaiting()) changeMake(afterMaking);
    recipeField.current?.focus();
  };

  const errors = [
    ...work.problems.map(({ field: name, message }) => ({ field: fieldId(name), message })),
    ...(work.refusal === null ? [] : [{ field: fieldId('recipe'), message: work.refusal }]),
  ];
  const { recipe } = work;
  return (
    <form
      class="form log-form"
      noValidate
      {...onCode}
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <ErrorSummary errors={attempt > 0 ? errors : []} attempt={attempt} />
      <Combobox
        {...field('recipe')}
        label="Recipe"
        listLabel="Recipes"
        text={draft.recipe}
        options={recipes}
        onText={input('recipe')}
        fieldRef={recipeField}
        focusHome
        hint={recipes.find(({ value }) => keyOf(value) === keyOf(draft.recipe))?.detail}
        onTake={(_, by) => {
          if (by !== 'tab') toAmount();
        }}
      />
      {recipe !== null && (
        <>
          <div class="pair">
            <NumberField
              {...field('amount')}
              label="How much"
              value={draft.amount ?? roundQuantity(recipe.record.yield).toString()}
              onInput={input('amount')}
            />
            <SelectField
              id={fieldId('unit')}
              label="Unit"
              value={work.unit?.name ?? ''}
              options={unitOptions(recipe, work.material)}
              onChange={input('unit')}
            />
          </div>
          <div class="pair">
            <DateField
              id={fieldId('date')}
              label="Day"
              value={draft.date ?? isoDay(today)}
              onInput={input('date')}
              error={errorOf('date')}
            />
            <Combobox
              {...field('place')}
              label="Kept at"
              optional
              listLabel="Places"
              text={draft.place ?? usualPlace(studio, recipe)}
              options={placeOptions(studio)}
              onText={input('place')}
            />
          </div>
        </>
      )}
      <BatchView
        books={books}
        draft={draft}
        work={work}
        isMoved={isMoved}
        change={change}
        field={field}
        input={input}
        sendLabel={isPoured(draft) ? 'Make it and pour' : 'Make it'}
      />
    </form>
  );
}
