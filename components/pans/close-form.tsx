import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { CloseNotes } from '#components/pans/close-notes.tsx'
import { Button } from '#components/ui/button.tsx'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import { buildName, openBuilds, sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** Asks before closing; where it can't be closed yet, says all that is in the way. */
export function CloseForm({ state, acting, now, choose, onBack }: TaskProps<'close'>) {
  const words = useFoodWords()
  const builds = openBuilds(state)
  const ways = notYetClosed(state, now)
  const isReady = ways.length === 0
  const places = toAnswer(state)
  const [first] = places
  const job = useJob({
    acting,
    about: 'close',
    lacks: [isReady ? null : words.notYetTitle],
    command: () => ({ type: 'close' }),
    done: words.done.closed,
    after: () => undefined,
  })
  return (
    <JobForm
      job={job}
      kind="no"
      send={words.closeNow}
      ways={
        <>
          {first && (
            <Button
              sub={words.ends.toAnswer(places.length)}
              onClick={() => choose({ task: 'end', at: { what: first.what, id: first.id } })}
            >
              {words.ends.start}
            </Button>
          )}
          <Button onClick={onBack}>{words.closeNot}</Button>
        </>
      }
    >
      {isReady && <p className={styles.large}>{words.closeWhy}</p>}
      {ways.map((way) => (
        <p key={way.code}>
          {way.code === 'builds-open'
            ? words.notYetWhy(builds.length)
            : words.sayRefusal(way, nameIn(state.station))}
        </p>
      ))}
      {builds.length > 0 && (
        <ul className={styles.facts}>
          {builds.map(({ ticket, build }) => {
            const name = buildName(ticket.number, build.letter)
            return (
              <li key={name}>
                <b>{sayBuild(name)}</b> {words.stateName[build.state]}
              </li>
            )
          })}
        </ul>
      )}
      <CloseNotes state={state} />
    </JobForm>
  )
}
