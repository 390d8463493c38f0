import { useState } from 'react'
import { isRefused, tell } from '#components/access/ask.ts'
import { About } from '#components/menu/fields/help.tsx'
import styles from '#components/menu/menu.module.css'
import own from '#components/menu/publish/publish.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import type { Publish, Published } from '#lib/editor/http.ts'

/** Labels that count as unknown until somebody reads them. */
const UNREAD: ReadonlySet<string> = new Set(['label-unread', 'label-old'])

/** The passphrase that makes the draft a revision. */
export function PublishForm({
  hasChanges,
  asksTouch,
}: {
  readonly hasChanges: boolean
  /** What touches what changes in it. */
  readonly asksTouch: boolean
}) {
  const words = useMenuWords()
  const { draft, missing, problems, clash, open, settle, again } = useMenu()
  const [proof, setProof] = useState('')
  const [isShown, setShown] = useState(false)
  const [neverTouched, setNever] = useState(false)
  const [isBusy, setBusy] = useState(false)
  const [done, setDone] = useState<number | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const unread = missing.keepApart.filter(({ code }) => UNREAD.has(code)).length
  const lacks =
    problems.length > 0
      ? words.publish.lacksMended(problems.length)
      : clash !== null
        ? words.publish.lacksClash
        : !hasChanges
          ? words.publish.lacksChange
          : proof === ''
            ? words.publish.lacksPassphrase
            : null
  const publish = async () => {
    if (lacks !== null || isBusy) return
    setBusy(true)
    setRefused(null)
    const saw = await settle()
    const never = open && asksTouch && neverTouched ? { neverTouched: true as const } : {}
    const asked: Publish | null =
      saw === null ? null : { station: draft.station, saw, proof, ...never }
    const answer = asked && (await tell<Published>('/menu/publish', asked))
    setBusy(false)
    setProof('')
    if (answer === null || isRefused(answer)) return setRefused(answer?.code ?? 'failed')
    setDone(answer.revision)
    await again()
  }
  if (done !== null)
    return (
      <>
        <Note kind="done" role="status">
          <b>{words.publish.published(done)}</b> {words.publish.whatThen}
        </Note>
        <ul className={own.next} aria-label={words.publish.next}>
          {unread > 0 && (
            <li>
              <a href={`/menu/label?station=${draft.station}`}>
                {words.publish.readLabels(unread)}
              </a>{' '}
              <span>{words.publish.readLabelsWhy}</span>
            </li>
          )}
          <li>
            <a href={`/?station=${draft.station}`}>{words.publish.openService}</a>{' '}
            <span>{words.publish.openServiceWhy}</span>
          </li>
          <li>
            <a href={`/sheet?station=${draft.station}`}>{words.publish.sheet}</a>{' '}
            <span>{words.publish.sheetWhy}</span>
          </li>
        </ul>
      </>
    )
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        void publish()
      }}
    >
      {open && asksTouch && (
        <About of="neverTouched">
          <label className={styles.check}>
            <input
              type="checkbox"
              checked={neverTouched}
              onChange={({ target }) => setNever(target.checked)}
            />
            {words.publish.neverTouched}
          </label>
        </About>
      )}
      <About of="passphrase">
        <Field
          label={words.publish.passphrase}
          type={isShown ? 'text' : 'password'}
          autoComplete="current-password"
          maxLength={400}
          value={proof}
          onChange={({ target }) => setProof(target.value)}
          side={
            <Button kind="quiet" aria-pressed={isShown} onClick={() => setShown(!isShown)}>
              {isShown ? words.publish.hide : words.publish.show}
            </Button>
          }
        />
      </About>
      {refused !== null && (
        <Note kind="no" role="alert">
          {words.publishRefused(refused)}
        </Note>
      )}
      <div className={styles.acts}>
        <Button kind="main" type="submit" disabled={isBusy} lacks={lacks}>
          {isBusy ? words.publish.publishing : words.publish.publish}
        </Button>
      </div>
    </form>
  )
}
