import { useEffect, useRef, useState } from 'react'
import { isRefused, type LetIn, type Refused, tell } from '#components/access/ask.ts'
import { CodeField } from '#components/access/code-field.tsx'
import styles from '#components/access/page.module.css'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { freeName } from '#lib/access/at-places.ts'
import { signsToGo } from '#lib/access/code-entry.ts'
import type { AccessAnswer, JoinByCode, OwnDevice } from '#lib/access/http.ts'

/** Names that are tried before the crew is told that none is free. */
const MOST_NAMES = 4

const joinBy = async (code: string, names: readonly string[]): Promise<AccessAnswer<LetIn>> => {
  const tried: string[] = []
  for (;;) {
    const name = freeName(names, tried, (count) => Math.floor(Math.random() * count))
    const asked: JoinByCode = { code, name }
    const answer = await tell<LetIn>('/access/join', asked)
    if (answer.code !== 'name-taken' || tried.length >= MOST_NAMES) return answer
    tried.push(name)
  }
}

/** Comes in by a code: the camera brought it whole, or it is typed. */
export function ByCode({
  first = '',
  onIn,
}: {
  /** What the camera brought; a whole one is used at once. */
  readonly first?: string
  readonly onIn: (you: OwnDevice) => void
}) {
  const { join: words, names } = useAccessWords()
  const [code, setCode] = useState(first)
  const [refused, setRefused] = useState<Refused | null>(null)
  const [isBusy, setBusy] = useState(false)
  const come = async (whole: string) => {
    setBusy(true)
    setRefused(null)
    const answer = await joinBy(whole, names)
    setBusy(false)
    // Used, it is in the way of the next one where this stays open: it was another place's.
    setCode('')
    if (isRefused(answer)) setRefused(answer)
    else onIn(answer.you)
  }
  const isTried = useRef(false)
  useEffect(() => {
    if (isTried.current || signsToGo(first) > 0) return
    isTried.current = true
    void come(first)
  })
  const lacks = signsToGo(code)
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        if (lacks === 0 && !isBusy) void come(code)
      }}
    >
      <CodeField code={code} onCode={setCode}>
        <Button
          kind="main"
          size="large"
          type="submit"
          disabled={isBusy}
          lacks={lacks > 0 ? words.lacks(lacks) : null}
        >
          {isBusy ? words.coming : words.come}
        </Button>
      </CodeField>
      <RefusedSaid refused={refused} />
    </form>
  )
}
