import { Fragment, type ReactNode } from 'react'
import styles from '#components/access/code-field.module.css'
import { useAccessWords } from '#components/access/words.tsx'
import { CODE_LETTERS } from '#lib/access/code.ts'
import { codePlaces, codeSoFar } from '#lib/access/code-entry.ts'

/** A code in two groups of four, drawn: as it is typed here, or read off the lead's screen. */
export function CodeSigns({ code }: { readonly code: string }) {
  const places = codePlaces(code)
  return (
    <span className={styles.signs} aria-hidden="true">
      {places.map((group, which) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: signs are told by their place alone
        <Fragment key={which}>
          {which > 0 && <b>-</b>}
          {group.map((sign, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: signs are told by their place alone
            <i key={place} data-is={sign === '' ? 'empty' : 'sign'}>
              {sign}
            </i>
          ))}
        </Fragment>
      ))}
    </span>
  )
}

/** A code is typed by keys that gloves meet, or on a real keyboard, or pasted. */
export function CodeField({
  code,
  onCode,
  children,
}: {
  readonly code: string
  readonly onCode: (code: string) => void
  /** What is done with it. */
  readonly children: ReactNode
}) {
  const { join: words } = useAccessWords()
  return (
    <div className={styles.field}>
      <div className={styles.top}>
        <label className={styles.shown}>
          <span>{words.code}</span>
          <span className={styles.box}>
            <CodeSigns code={code} />
            <input
              inputMode="none"
              autoComplete="off"
              autoCapitalize="characters"
              autoCorrect="off"
              spellCheck={false}
              value={code}
              onChange={(event) => onCode(codeSoFar(event.target.value))}
            />
          </span>
        </label>
        {children}
      </div>
      <fieldset className={styles.keys}>
        <legend className="visually-hidden">{words.keys}</legend>
        {[...CODE_LETTERS].map((sign) => (
          <button key={sign} type="button" onClick={() => onCode(codeSoFar(code + sign))}>
            {sign}
          </button>
        ))}
        <button
          type="button"
          className={styles.back}
          aria-label={words.takeBack}
          onClick={() => onCode(code.slice(0, -1))}
        >
          ⌫
        </button>
      </fieldset>
    </div>
  )
}
