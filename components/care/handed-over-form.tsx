import { useState } from 'react'
import { handedOverKind } from '#components/care/handed-over-said.ts'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { InChargeField, InitialsField } from '#components/job/proof-fields.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useInitials, usePassphrase } from '#components/job/use-proof.ts'
import { Note } from '#components/ui/note.tsx'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { HANDED_OVER_ANSWERS } from '#lib/service/events/handed-over-event.ts'
import { sayBuild } from '#lib/service/tickets.ts'

type Answer = (typeof HANDED_OVER_ANSWERS)[number]

/** Builds that were handed over with food which was found bad later: the person in charge answers. */
export function HandedOverForm({ state, acting, task, onBack }: TaskProps<'handed-over'>) {
  const words = useFoodWords()
  const { what, id } = task
  const list = handedOverListOf(state, what, id)
  const [answer, setAnswer] = useState<Answer | null>(null)
  const initials = useInitials(true)
  const inCharge = usePassphrase()
  const job = useJob({
    acting,
    about: id,
    lacks: [answer === null ? words.givenOut.lackAnswer : null],
    initials,
    inCharge,
    command: () =>
      answer === null || !list
        ? null
        : {
            type: 'answerHandedOver',
            what,
            id,
            answer,
            seen: list.builds.length,
            initials: initials.text.trim(),
          },
    done: words.givenOut.done(
      what === 'shelf' ? words.readHere.shelf.title : foodName(state, what, id),
    ),
    after: onBack,
  })
  if (!list) return <p>{words.givenOut.none}</p>
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  return (
    <JobForm
      job={job}
      send={words.givenOut.send}
      side={
        <div className={styles.what}>
          <InitialsField initials={initials} />
          <InChargeField proof={inCharge} />
        </div>
      }
    >
      <Note kind="watch">
        {words.givenOut.because[list.because]}{' '}
        <b>{words.givenOut.howMany(time(list.since), list.builds.length, handedOverKind(what))}</b>
      </Note>
      <ul className={styles.facts}>
        {list.builds.map(({ build, at }) => (
          <li key={build}>
            <b>{sayBuild(build)}</b> {time(at)}
          </li>
        ))}
      </ul>
      <p>
        {words.givenOut.who} {words.givenOut.notYet}
      </p>
      <ChoiceRow
        legend={words.givenOut.answers}
        options={HANDED_OVER_ANSWERS.map((one) => ({
          id: one,
          label: words.givenOut.answer[one],
          more: words.givenOut.answerMeans[one],
        }))}
        value={answer}
        onChange={setAnswer}
      />
    </JobForm>
  )
}
