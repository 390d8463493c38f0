import type { ReactNode } from 'react'
import { CleanedProbe } from '#components/food/cleaned-probe.tsx'
import { KeptProbe } from '#components/food/kept-probe.tsx'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ReadingScale } from '#components/job/probe-scale.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Note } from '#components/ui/note.tsx'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { readingOf } from '#lib/rooms/food/views/reading-entry.ts'
import { isProbeUsed, probeBrings, type RoundStep } from '#lib/rooms/food/views/round.ts'

interface ReadingStepProps extends Pick<TaskProps<'read'>, 'state' | 'acting' | 'now'> {
  readonly step: RoundStep
  /** What the main button says below what it records. */
  readonly sub?: string
  /** A button beside what is kept from the reading before. */
  readonly beside?: ReactNode
  /** In the place of all that is asked. */
  readonly instead?: ReactNode
  /** Below what is asked. */
  readonly more?: ReactNode
  readonly onDone: (isOut: boolean) => void
}

/** One reading of what stands on the line or behind it, or waits: alone, or in a round. */
export function ReadingStep(props: ReadingStepProps) {
  const { state, acting, now, step, sub, beside, instead, more, onDone } = props
  const words = useFoodWords()
  const { what, id, where } = step
  const form = useReading(state, step.component, step.context, step.limit, {
    places: [where, 'surface'],
  })
  const { entry, judged } = form
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const times = foodTimes(state, what, id, now)
  const brings = probeBrings(state, step, entry.probe)
  const kept = what === 'batch' ? 'batch' : 'backup'
  const isAsked = brings !== null
  const isOut = judged.verdict === 'not-met'
  const isEnd = isAsked && entry.cleaned === false
  const isUsed = isProbeUsed(state, entry.probe)
  const job = useJob({
    acting,
    about: `${what} ${id}`,
    lacks: [
      judged.temperature !== null && isAsked && entry.cleaned === undefined
        ? words.round.lackClean
        : null,
    ],
    form,
    command: () => {
      const reading = readingOf(entry)
      const initials = entry.initials.trim()
      return reading && { type: 'readTemperature', what, id, reading, initials }
    },
    done: () => {
      const reading = readingOf(entry)
      return words.forms.readDone(
        foodName(state, what, id),
        reading ? words.sayDegrees(reading) : '',
      )
    },
    after: () => onDone(isOut),
  })
  return (
    <JobForm
      job={job}
      kind={isOut || isEnd ? 'no' : 'main'}
      send={(isOut ? words.forms.readOut : words.forms.readSend)(
        form.typed && words.sayDegrees(form.typed),
      )}
      sub={isEnd ? words.round.endsShort(kept) : isOut ? undefined : sub}
      scale={<ReadingScale form={form} />}
      side={<ReadingPad form={form} />}
    >
      {!instead && !isAsked && isUsed && <p className={styles.large}>{words.round.clean}</p>}
      <p className={styles.large}>{words.round.how[step.how]}</p>
      {instead ?? (
        <>
          <p>
            {times?.newest
              ? words.forms.newest(
                  words.sayDegrees(times.newest.temperature),
                  time(times.newest.at),
                )
              : words.forms.never}{' '}
            {times?.nextBy ? words.forms.nextBy(time(times.nextBy)) : ''}
          </p>
          {times?.offSale && <Note kind="no">{words.forms.resolveWhy[times.offSale.why]}</Note>}
          {isAsked && <CleanedProbe {...{ brings, form, state }} what={kept} />}
          <KeptProbe form={form} beside={beside} isCrowded={isAsked} />
          {more}
        </>
      )}
    </JobForm>
  )
}
