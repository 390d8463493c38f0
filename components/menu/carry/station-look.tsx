import { useEffect, useState } from 'react'
import { lookAtStation, takeStation } from '#components/menu/carry/ask-carry.ts'
import styles from '#components/menu/carry/carry.module.css'
import { useCarryWords } from '#components/menu/carry/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import type { ImportLook } from '#lib/carry/http.ts'

interface StationLookProps {
  readonly file: File
  /** The station whose page this is, if any. */
  readonly own: { readonly station: string; readonly name: string } | null
  readonly onTaken: (station: string, said: string) => void
}

/** What a station's file would do: where it goes, what differs, which labels arrive. */
export function StationLook({ file, own, onTaken }: StationLookProps) {
  const words = useCarryWords()
  const [into, setInto] = useState('new')
  const [seen, setSeen] = useState<ImportLook | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [isBusy, setBusy] = useState(true)

  useEffect(() => {
    let isOver = false
    setBusy(true)
    void lookAtStation(file, into).then((answer) => {
      if (isOver) return
      setBusy(false)
      if (answer.code === 'done') setSeen(answer)
      else {
        setSeen(null)
        setSaid(
          answer.code === 'wrong-file'
            ? `${words.wrongFile(answer.problem)} ${words.nothingChanged}`
            : words.lost,
        )
      }
    })
    return () => {
      isOver = true
    }
  }, [file, into, words])

  const take = async () => {
    if (seen === null) return
    setBusy(true)
    const answer = await takeStation(file, into, seen.saw)
    setBusy(false)
    if (answer.code === 'done') {
      const { length } = answer.problems
      onTaken(
        answer.station,
        `${words.taken(seen.name)}${length === 0 ? '' : ` ${words.takenWith(length)}`}`,
      )
    } else if (answer.code === 'stale') {
      setSaid(words.stale)
      const again = await lookAtStation(file, into)
      if (again.code === 'done') setSeen(again)
    } else setSaid(words.lost)
  }

  if (seen === null)
    return said === null ? (
      <p role="status">{words.looking}</p>
    ) : (
      <Note kind="no" role="alert">
        {said}
      </Note>
    )

  const targets = new Map([own, seen.same].flatMap((one) => (one ? [[one.station, one.name]] : [])))
  const ways = [
    { id: 'new', label: words.asNew },
    ...[...targets].map(([id, name]) => ({ id, label: words.intoThis(name) })),
  ]
  const isNew = into === 'new'
  const told = seen.ingredients.filter(
    ({ does, differs }) => does === 'apart' || differs.length > 0,
  )
  const count = (does: 'here' | 'new'): number =>
    seen.ingredients.filter((one) => (one.does === 'here') === (does === 'here')).length
  return (
    <>
      <Choice legend={words.whereTo} ways={ways} chosen={into} onChoose={setInto} />
      <div className={styles.paper}>
        <p className={styles.head}>{words.brings(seen.there.name)}</p>
        <p className={styles.becomes}>{words.becomes(seen.name)}</p>
        <h3>{isNew ? words.asNew : words.changes(seen.changes.length)}</h3>
        {isNew ? (
          <p>
            {words.added(seen.changes)}; {words.counts(seen.pictures)}
          </p>
        ) : (
          <ul>
            {seen.changes.map((change) => (
              <li
                key={`${change.entity} ${change.id} ${change.what} ${'field' in change ? change.field : ''}`}
              >
                {words.change(change)}
              </li>
            ))}
          </ul>
        )}
        <h3>{words.labels}</h3>
        <ul>
          {count('new') > 0 && <li>{words.arrive(count('new'))}</li>}
          {count('here') > 0 && <li>{words.ownStay(count('here'))}</li>}
          {told.map((one) => (
            <li key={one.id}>{words.met(one)}</li>
          ))}
        </ul>
      </div>
      <Note kind="watch">{words.unread(seen.unread)}</Note>
      {seen.open && <Note>{words.isOpen}</Note>}
      {said !== null && (
        <Note kind="watch" role="status">
          {said}
        </Note>
      )}
      <Button kind="main" size="large" disabled={isBusy} onClick={() => void take()}>
        {words.take}
      </Button>
    </>
  )
}
