import { useEffect, useState } from 'react'
import { isRefused, look, tell } from '#components/access/ask.ts'
import styles from '#components/menu/publish/publish.module.css'
import { useCompared } from '#components/menu/publish/use-compared.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { textIn } from '#lib/editor/draft.ts'
import type { BackTo, MenuRevisions } from '#lib/editor/http.ts'

/** Earlier revisions: what differs from now, and bringing one back into the draft. */
export function Revisions() {
  const words = useMenuWords()
  const { draft, published, saw, settle, again } = useMenu()
  const [seen, setSeen] = useState<MenuRevisions['revisions']>([])
  const [chosen, setChosen] = useState<number | null>(null)
  const [isSure, setSure] = useState(false)
  const [done, setDone] = useState<number | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const changes = useCompared(draft.station, chosen, saw)
  const timeZone = textIn(draft.rows.house, 'timeZone') || 'UTC'
  // biome-ignore lint/correctness/useExhaustiveDependencies: one more was published
  useEffect(() => {
    let isShown = true
    void look<MenuRevisions>(`/menu/revisions?station=${draft.station}`).then((answer) => {
      if (isShown && !isRefused(answer)) setSeen(answer.revisions)
    })
    return () => {
      isShown = false
    }
  }, [draft.station, published])
  if (seen.length === 0) return null
  const back = async (revision: number) => {
    if (!isSure) return setSure(true)
    setSure(false)
    const now = await settle()
    if (now === null) return setRefused('failed')
    const asked: BackTo = { station: draft.station, saw: now, revision }
    const answer = await tell('/menu/back', asked)
    if (isRefused(answer)) return setRefused(answer.code)
    setRefused(null)
    setDone(revision)
    setChosen(null)
    await again()
  }
  return (
    <section aria-label={words.publish.revisions}>
      <h3>{words.publish.revisions}</h3>
      {done !== null && (
        <Note kind="done" role="status">
          {words.publish.broughtBack(done)}
        </Note>
      )}
      {refused !== null && <Note kind="no">{words.publishRefused(refused)}</Note>}
      <ul className={styles.list}>
        {seen.map(({ revision, at }) => (
          <li key={revision}>
            <button
              type="button"
              aria-expanded={chosen === revision}
              onClick={() => {
                setSure(false)
                setChosen(chosen === revision ? null : revision)
              }}
            >
              <b>{words.publish.revision(revision)}</b>{' '}
              <span>{at === null ? '' : words.publish.at(at, timeZone)}</span>
            </button>
            {chosen === revision && (
              <div>
                <h4>{words.publish.look}</h4>
                {changes?.length === 0 ? (
                  <p>{words.publish.same}</p>
                ) : (
                  <ul className={styles.plain}>
                    {changes?.map((change) => (
                      <li key={JSON.stringify(change)}>{words.change(change)}</li>
                    ))}
                  </ul>
                )}
                {(changes?.length ?? 0) > 0 && (
                  <Button onClick={() => void back(revision)}>
                    {isSure ? words.publish.backSure : words.publish.back(revision)}
                  </Button>
                )}
              </div>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}
