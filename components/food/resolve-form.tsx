import { type ReactNode, useState } from 'react'
import { sayHandedOver } from '#components/care/handed-over-said.ts'
import { OffSaleNote } from '#components/food/off-sale-note.tsx'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-name.ts'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { InChargeField } from '#components/job/proof-fields.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { Steps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { usePassphrase } from '#components/job/use-proof.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { batchWays, waysFor } from '#lib/rooms/food/facts/ways-out.ts'
import { heatAgainLimit, heatReadingOf } from '#lib/rooms/food/views/reading-entry.ts'
import type { WayOut } from '#lib/safety/holding.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

type Way = WayOut['way']

/** Hours that cooling takes at most: what is offered first to who stays. */
const BOTH_STAGES = 6

interface WaySaid {
  readonly id: Way
  readonly label: string
  readonly more: string
}

/** Open builds that are held for what stands there. */
const heldFor = (state: RunningState, id: string): readonly string[] =>
  openBuilds(state).flatMap(({ ticket, build }) =>
    build.hold?.pans?.includes(id) ? [buildName(ticket.number, build.letter)] : [],
  )

interface ResolveFormProps extends TaskProps<'resolve'> {
  /** In a round of readings: the way on, while nobody has decided. */
  readonly onward?: ReactNode
}

/** What must not be served: the ways that the code allows, of which the person in charge takes one. */
export function ResolveForm(props: ResolveFormProps) {
  const { state, acting, task, now, choose, onBack, onward } = props
  const words = useFoodWords()
  const { what, id } = task
  const placed = placeOf(state, task)
  const offSale = placed?.offSale ?? null
  const list = handedOverListOf(state, what, id)
  const place = state.station.safety.reheatOn[0] ?? 'range'
  const form = useReading(
    state,
    placed?.component ?? '',
    'reheating',
    heatAgainLimit(state.station, place),
    { isSignature: true },
  )
  const inCharge = usePassphrase()
  const [hours, setHours] = useState<number | null>(null)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const held = heldFor(state, id)
  const each = state.portions[placed?.component ?? '']?.amount ?? 1
  const then = {
    discard: words.forms.resolveThen.discard(held, Math.round((placed?.amount ?? 0) / each)),
    reheat: words.forms.resolveThen.reheat(held),
    'time-only': words.forms.resolveThen['time-only'](held),
  }
  const ways: readonly WaySaid[] =
    offSale?.why === 'cooling-missed'
      ? batchWays(state, id, now).flatMap((one): WaySaid[] =>
          one === 'discard'
            ? [{ id: 'discard', label: words.safety.coolingWay.discard, more: then.discard }]
            : one === 'reheat-and-cool-again'
              ? [{ id: 'reheat', label: words.safety.coolingWay[one], more: then.reheat }]
              : [],
        )
      : waysFor(state, what, id, now).map((one) => ({
          id: one.way,
          label: words.safety.way(one, time),
          more: then[one.way],
        }))
  const [chosen, setChosen] = useState<Way | null>(null)
  const way = ways.some((one) => one.id === chosen) ? chosen : null
  const isHeated = way === 'reheat'
  const isCooledAgain = isHeated && offSale?.why === 'cooling-missed'
  const job = useJob({
    acting,
    about: id,
    lacks: [
      way === null ? words.forms.resolveLack : null,
      isCooledAgain && hours === null ? words.batches.coolPresentLack : null,
    ],
    form: isHeated ? form : null,
    inCharge,
    command: () => {
      const reading = isHeated ? heatReadingOf(form.entry) : null
      return (
        way && {
          type: 'resolveOffSale',
          what,
          id,
          way,
          ...(reading ? { reading, place, initials: form.entry.initials.trim() } : {}),
          ...(isCooledAgain && hours !== null
            ? { presentUntil: now + hours * HOUR_MS + MINUTE_MS }
            : {}),
        }
      )
    },
    done: words.forms.resolved(foodName(state, what, id)),
    after: () => {
      if (onward) onBack()
      else if (list) choose({ task: 'handed-over', what, id })
      else if (way === 'discard') choose({ task: 'throw-out', early: null })
      else onBack()
    },
  })
  if (!offSale) return <p>{words.forms.resolveNot}</p>
  return (
    <JobForm
      job={job}
      send={words.forms.resolveSend}
      side={isHeated ? <ReadingPad form={form} /> : <InChargeField proof={inCharge} />}
      note={isHeated ? undefined : words.readings.decides}
      ways={
        (list || onward || offSale.why === 'reading-missed') && (
          <>
            {way === null && onward}
            {list && (
              <Button onClick={() => choose({ task: 'handed-over', what, id })}>
                {words.givenOut.open}
              </Button>
            )}
            {offSale.why === 'reading-missed' && (
              <Button onClick={() => choose({ task: 'read', what, id })}>
                {words.forms.behindRead}
              </Button>
            )}
          </>
        )
      }
    >
      <OffSaleNote {...{ state, what, id, now }} />
      {list && (
        <Note kind="watch">
          {sayHandedOver(words, state, list)} {words.givenOut.who}
        </Note>
      )}
      <ChoiceRow legend={words.forms.resolveWho} options={ways} value={way} onChange={setChosen} />
      {isCooledAgain && (
        <Steps
          label={words.batches.coolPresent}
          shown={hours === null ? words.forms.clockNotSaid : time(now + hours * HOUR_MS)}
          by={[-1, 1]}
          onStep={(by) =>
            setHours(hours === null ? BOTH_STAGES : Math.max(1, Math.min(12, hours + by)))
          }
        />
      )}
      {isHeated && (
        <>
          <ProbeFields form={form} asksHeld />
          <InChargeField proof={inCharge} />
        </>
      )}
    </JobForm>
  )
}
