/** Every job under the line: what it is called, what is told beside that, and what it is done with. */
import { type ComponentType, lazy, Suspense } from 'react'
import { HandedOverForm } from '#components/care/handed-over-form.tsx'
import { handedOverKind } from '#components/care/handed-over-said.ts'
import { LabelPanel } from '#components/care/label-panel.tsx'
import { OtherScoop } from '#components/care/other-scoop.tsx'
import { ScoopForm } from '#components/care/scoop-form.tsx'
import { BatchForm } from '#components/food/batch-form.tsx'
import { BehindList } from '#components/food/behind-list.tsx'
import { ClockForm } from '#components/food/clock-form.tsx'
import { FillForm, PutForm } from '#components/food/put-form.tsx'
import { ReadForm } from '#components/food/read-form.tsx'
import { ResolveForm } from '#components/food/resolve-form.tsx'
import { RoundForm } from '#components/food/round-form.tsx'
import { SanitizerForm } from '#components/food/sanitizer-form.tsx'
import { ShelfForm } from '#components/food/shelf-form.tsx'
import { StartBatchForm } from '#components/food/start-batch-form.tsx'
import { ThrowOutForm } from '#components/food/throw-out-form.tsx'
import { foodName } from '#components/job/food-name.ts'
import type { TaskName, TaskOf, TaskProps } from '#components/job/task-props.ts'
import type { FoodWords } from '#components/job/use-food-words.ts'
import { CloseForm } from '#components/pans/close-form.tsx'
import { CountForm } from '#components/pans/count-form.tsx'
import { InChargePanel } from '#components/pans/in-charge-panel.tsx'
import { KeepForm } from '#components/pans/keep-form.tsx'
import { PanHome } from '#components/pans/pan-home.tsx'
import { SellingForm } from '#components/pans/selling-form.tsx'
import { ShortForm } from '#components/pans/short-form.tsx'
import { UnpaidForLead } from '#components/pans/unpaid-for-lead.tsx'
import { WasteForm } from '#components/pans/waste-form.tsx'
import { WeighForm } from '#components/pans/weigh-form.tsx'
import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { potOf } from '#lib/rooms/food/views/batch-strip.ts'
import { unpaidTickets } from '#lib/rooms/shelf/facts/unpaid.ts'
import type { RunningState } from '#lib/service/state.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { ReadHere } from '#lib/station/read-here.ts'

export interface JobOf<Name extends TaskName> {
  readonly title: (words: FoodWords, state: RunningState, task: TaskOf<Name>, now: number) => string
  readonly Body: ComponentType<TaskProps<Name>>
}

const READ_HERE: Readonly<Record<ReadHere, ComponentType<TaskProps<'read-here'>>>> = {
  shelf: ShelfForm,
  sanitizer: SanitizerForm,
}

/** Brings a calendar along, so that no other job waits for it. */
const SetUpForm = lazy(async () => ({
  default: (await import('#components/food/set-up-form.tsx')).SetUpForm,
}))

const EndForm = lazy(async () => ({
  default: (await import('#components/food/end-form.tsx')).EndForm,
}))

function End(props: TaskProps<'end'>) {
  return (
    <Suspense fallback={null}>
      <EndForm {...props} />
    </Suspense>
  )
}

function SetUp(props: TaskProps<'set-up'>) {
  return (
    <Suspense fallback={null}>
      <SetUpForm {...props} />
    </Suspense>
  )
}

function ReadHereForm(props: TaskProps<'read-here'>) {
  const Form = READ_HERE[props.task.of]
  return <Form {...props} />
}

const inPan =
  (say: (words: FoodWords, name: string) => string) =>
  (words: FoodWords, state: RunningState, { pan }: { readonly pan: string }): string =>
    say(words, foodName(state, 'pan', pan))

const at =
  (say: (words: FoodWords, name: string) => string) =>
  (
    words: FoodWords,
    state: RunningState,
    { what, id }: { readonly what: string; readonly id: string },
  ): string =>
    say(words, foodName(state, what, id))

const of =
  (say: (words: FoodWords, name: string) => string) =>
  (words: FoodWords, state: RunningState, { component }: { readonly component: string }): string =>
    say(words, nameIn(state.station)(component))

export const JOBS: { readonly [Name in TaskName]: JobOf<Name> } = {
  pan: { title: inPan((_, name) => name), Body: PanHome },
  put: {
    title: (words, state, { pan, way }) => words.forms.putTitle[way](foodName(state, 'pan', pan)),
    Body: PutForm,
  },
  'set-up': { title: (words) => words.setUp.title, Body: SetUp },
  'fill-backup': {
    title: (words, state, { id }) => words.forms.fillTitle(foodName(state, 'backup', id)),
    Body: FillForm,
  },
  read: { title: at((words, name) => words.forms.readTitle(name)), Body: ReadForm },
  round: {
    title: (words, state, { of, at: { what, id } }) =>
      words.round.title(
        1 + of.findIndex((one) => one.what === what && one.id === id),
        of.length,
        foodName(state, what, id),
        what,
      ),
    Body: RoundForm,
  },
  clock: { title: at((words, name) => words.forms.clockTitle(name)), Body: ClockForm },
  resolve: {
    title: (words, state, { what, id }) =>
      words.forms.resolveTitle(foodName(state, what, id), what),
    Body: ResolveForm,
  },
  'handed-over': {
    title: (words, state, { what, id }) =>
      words.givenOut.title(
        what === 'build' ? sayBuild(id) : foodName(state, what, id),
        handedOverKind(what),
        handedOverListOf(state, what, id)?.because,
      ),
    Body: HandedOverForm,
  },
  count: { title: inPan((words, name) => `${name}: ${words.correct}`), Body: CountForm },
  weigh: { title: inPan((words, name) => words.forms.weighTitle(name)), Body: WeighForm },
  waste: { title: inPan((words, name) => words.forms.wasteTitle(name)), Body: WasteForm },
  'other-scoop': {
    title: inPan((words, name) => `${name}: ${words.wrongScoop}`),
    Body: OtherScoop,
  },
  keep: { title: of((words, name) => words.forms.saveTitle(name)), Body: KeepForm },
  scoop: {
    title: (words, state, { component }) => {
      const name = nameIn(state.station)(component)
      return state.standIns[component]
        ? words.forms.scoopBackTitle(name)
        : words.forms.scoopTitle(name)
    },
    Body: ScoopForm,
  },
  short: { title: of((words, name) => words.forms.shortTitle(name)), Body: ShortForm },
  selling: {
    title: (words, state, { what, id }) => {
      const name = nameIn(state.station)(id)
      return state.notSelling[what][id] === undefined
        ? words.stopTitle(name)
        : words.resumeTitle(name)
    },
    Body: SellingForm,
  },
  behind: {
    title: (words, state, { component }) =>
      component === null
        ? words.forms.behindTitle
        : words.forms.behindOf(nameIn(state.station)(component)),
    Body: BehindList,
  },
  'read-here': {
    title: (words, _, { of: what }) => words.readHere[what].title,
    Body: ReadHereForm,
  },
  'start-batch': { title: (words) => words.forms.startTitle, Body: StartBatchForm },
  batch: {
    title: (words, state, { id }) =>
      words.forms.batchTitle(
        foodName(state, 'batch', id),
        words.sayTime(state.batches[id]?.startedAt ?? state.at, state.station.timeZone),
        potOf(state, id),
      ),
    Body: BatchForm,
  },
  'throw-out': {
    title: (words, state, { early }) =>
      early
        ? words.forms.throwEarly(foodName(state, early.what, early.id), early.what)
        : words.forms.throwTitle,
    Body: ThrowOutForm,
  },
  labels: { title: (words) => words.first.labelChanged, Body: LabelPanel },
  'in-charge': { title: (words) => words.first.inCharge, Body: InChargePanel },
  unpaid: {
    title: (words, state) => words.notPaid(unpaidTickets(state).length),
    Body: (props) => <UnpaidForLead {...props} onBack={null} />,
  },
  end: {
    title: (words, state, { at: { what, id } }) =>
      words.ends.title(foodName(state, what, id), what),
    Body: End,
  },
  close: {
    title: (words, state, _, now) =>
      notYetClosed(state, now).length === 0 ? words.closeTitle : words.notYetTitle,
    Body: CloseForm,
  },
}
