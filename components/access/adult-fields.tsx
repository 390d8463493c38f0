import { useState } from 'react'
import styles from '#components/access/adult-fields.module.css'
import { useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { rulesMet, type TypedAdult } from '#lib/access/new-adult.ts'

/** A passphrase on a line to type on, hidden unless whoever types wants to see it. */
export function PassphraseLine({
  label,
  value,
  isNew = false,
  onChange,
}: {
  readonly label: string
  readonly value: string
  /** So that a browser doesn't fill in the one it knows. */
  readonly isNew?: boolean
  readonly onChange: (value: string) => void
}) {
  const words = useAccessWords()
  const [isShown, setShown] = useState(false)
  return (
    <Field
      label={label}
      type={isShown ? 'text' : 'password'}
      autoComplete={isNew ? 'new-password' : 'current-password'}
      autoCapitalize="off"
      autoCorrect="off"
      spellCheck={false}
      maxLength={400}
      value={value}
      onChange={(event) => onChange(event.target.value)}
      side={
        <Button kind="quiet" aria-pressed={isShown} onClick={() => setShown(!isShown)}>
          {isShown ? words.passphrase.hide : words.passphrase.show}
        </Button>
      }
    />
  )
}

function Rule({ isMet, children }: { readonly isMet: boolean; readonly children: string }) {
  const { passphrase } = useAccessWords()
  return (
    <li data-met={isMet || undefined}>
      {children}
      <span className="visually-hidden">: {isMet ? passphrase.met : passphrase.unmet}</span>
    </li>
  )
}

/** What a new passphrase has to be, each said before it is broken. */
function PassphraseRules({
  passphrase,
  others,
}: {
  readonly passphrase: string
  readonly others: readonly string[]
}) {
  const { passphrase: words } = useAccessWords()
  const met = rulesMet(passphrase, others)
  return (
    <div className={styles.rules}>
      <p id="rules">{words.rules}</p>
      <ul aria-labelledby="rules">
        <Rule isMet={met.more === 0}>{words.long(met.more)}</Rule>
        <Rule isMet={met.isUncommon}>{words.uncommon}</Rule>
        {others.length > 0 && <Rule isMet={met.isOwn}>{words.own}</Rule>}
      </ul>
      <p>{words.hint}</p>
    </div>
  )
}

/** The passphrase of before, and the one from now on. */
export function ChangeFields({
  before,
  passphrase,
  onBefore,
  onPassphrase,
}: {
  readonly before: string
  readonly passphrase: string
  readonly onBefore: (before: string) => void
  readonly onPassphrase: (passphrase: string) => void
}) {
  const { devices, passphrase: words } = useAccessWords()
  return (
    <div className={styles.fields} data-even="">
      <PassphraseLine label={devices.before} value={before} onChange={onBefore} />
      <PassphraseLine label={words.newOne} isNew value={passphrase} onChange={onPassphrase} />
      <PassphraseRules passphrase={passphrase} others={[]} />
    </div>
  )
}

/** Somebody's name and passphrase, with the rules said before they are broken. */
export function AdultFields({
  adult,
  others = [],
  onAdult,
}: {
  readonly adult: TypedAdult
  /** Passphrases that are somebody else's. */
  readonly others?: readonly string[]
  readonly onAdult: (adult: TypedAdult) => void
}) {
  const { passphrase: words } = useAccessWords()
  return (
    <div className={styles.fields}>
      <Field
        label={words.name}
        maxLength={40}
        value={adult.name}
        onChange={(event) => onAdult({ ...adult, name: event.target.value })}
      />
      <PassphraseLine
        label={words.passphrase}
        isNew
        value={adult.passphrase}
        onChange={(passphrase) => onAdult({ ...adult, passphrase })}
      />
      <PassphraseRules passphrase={adult.passphrase} others={others} />
    </div>
  )
}
