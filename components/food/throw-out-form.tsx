import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { InitialsField } from '#components/job/proof-fields.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useInitials } from '#components/job/use-proof.ts'
import { DISCARD_REASONS, type DiscardReason } from '#lib/service/events/food-event.ts'
import type { ToThrowOut } from '#lib/service/food-state.ts'

type Props = TaskProps<'throw-out'>
type Early = NonNullable<Props['task']['early']>

const reasonOf: Readonly<Record<ToThrowOut['because'], DiscardReason>> = {
  time: 'past-time',
  date: 'past-date',
  'too-warm': 'out-of-limits',
  'out-of-limits': 'out-of-limits',
  'taken-away': 'left-over',
  'counted-empty': 'left-over',
}

const keyOf = ({ what, id }: Pick<ToThrowOut, 'what' | 'id'>): string => `${what} ${id}`

/** One thing that goes early. */
function ThrowEarly({ state, acting, early, onBack }: Props & { readonly early: Early }) {
  const words = useFoodWords()
  const initials = useInitials(true)
  const [reason, setReason] = useState<DiscardReason | null>(null)
  const job = useJob({
    acting,
    about: early.id,
    lacks: [reason === null ? words.forms.wasteLack : null],
    initials,
    command: () => reason && { type: 'throwOut', ...early, reason, initials: initials.text.trim() },
    done: words.forms.throwDone(foodName(state, early.what, early.id)),
    after: onBack,
  })
  return (
    <JobForm
      job={job}
      kind="no"
      send={words.forms.throwSend}
      side={<InitialsField initials={initials} />}
    >
      <ChoiceRow
        legend={words.forms.reason}
        options={DISCARD_REASONS.map((id) => ({ id, label: words.forms.discardReason[id] }))}
        value={reason}
        onChange={setReason}
      />
    </JobForm>
  )
}

/** What has to be thrown out stays here until it is initialed, each by itself. */
function ThrowList({ state, acting, onBack }: Props) {
  const words = useFoodWords()
  const list = Object.values(state.toThrowOut)
  const initials = useInitials(true)
  const [chosen, setChosen] = useState<string | null>(null)
  const one = list.find((each) => keyOf(each) === chosen) ?? null
  const job = useJob({
    acting,
    about: list.length,
    lacks: [list.length === 0 ? words.forms.throwNone : one ? null : words.forms.throwLack],
    initials,
    command: () =>
      one
        ? {
            type: 'throwOut',
            what: one.what,
            id: one.id,
            reason: reasonOf[one.because],
            initials: initials.text.trim(),
          }
        : null,
    done: one ? words.forms.throwDone(foodName(state, one.what, one.id)) : '',
    after: () => {
      setChosen(null)
      if (list.length <= 1) onBack()
    },
  })
  return (
    <JobForm
      job={job}
      kind="no"
      send={words.forms.throwSend}
      sub={
        one ? `${foodName(state, one.what, one.id)} ${words.forms.throwWhat[one.what]}` : undefined
      }
      side={
        <div className={styles.what}>
          <InitialsField initials={initials} />
          <p>{words.forms.throwWhy}</p>
        </div>
      }
    >
      <ChoiceRow
        legend={words.forms.throwWhich}
        options={list.map((each) => ({
          id: keyOf(each),
          label: `${foodName(state, each.what, each.id)} ${words.forms.throwWhat[each.what]}`,
          more: `${words.forms.throwBecause[each.because]}, ${words.forms.throwSince(words.sayTime(each.since, state.station.timeZone))}`,
        }))}
        value={one ? keyOf(one) : null}
        onChange={setChosen}
      />
    </JobForm>
  )
}

export function ThrowOutForm(props: Props) {
  const { early } = props.task
  return early ? <ThrowEarly {...props} early={early} /> : <ThrowList {...props} />
}
