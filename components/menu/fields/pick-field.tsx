import styles from '#components/menu/fields/fields.module.css'
import { About, type HelpOf } from '#components/menu/fields/help.tsx'
import { type FieldOf, useField } from '#components/menu/fields/use-field.ts'
import { useMenuWords } from '#components/menu/words.tsx'
import { Choice } from '#components/ui/choice.tsx'

interface PickFieldProps<Id extends string> extends FieldOf {
  readonly label: string
  readonly help: HelpOf
  readonly ways: readonly { readonly id: Id; readonly label: string; readonly more?: string }[]
  /** What an answer is kept as, where it isn't the id itself. */
  readonly kept?: (id: Id) => string | number | boolean
}

/** One of a few answers; none is chosen until somebody does. */
export function PickField<Id extends string>({
  label,
  help,
  ways,
  kept = (id) => id,
  ...of
}: PickFieldProps<Id>) {
  const { value, problem, answer } = useField(of)
  return (
    <About of={help}>
      <Choice
        legend={label}
        ways={ways}
        chosen={ways.find(({ id }) => kept(id) === value)?.id ?? null}
        onChoose={(id) => answer(kept(id))}
      />
      {problem !== null && (
        <p role="alert" className={styles.problem}>
          {problem}
        </p>
      )}
    </About>
  )
}

interface ListFieldProps extends FieldOf {
  readonly label: string
  readonly help: HelpOf
  readonly options: readonly { readonly id: string; readonly label: string }[]
}

/** One of a long list. */
export function ListField({ label, help, options, ...of }: ListFieldProps) {
  const words = useMenuWords()
  const { value, problem, answer } = useField(of)
  return (
    <About of={help}>
      <label className={styles.list}>
        <span>{label}</span>
        <select
          aria-description={words.help[help]}
          value={typeof value === 'string' ? value : ''}
          onChange={({ target }) => answer(target.value)}
        >
          {typeof value !== 'string' && <option value="">{words.screen.notSaid}</option>}
          {typeof value === 'string' && !options.some(({ id }) => id === value) && (
            <option value={value}>{value}</option>
          )}
          {options.map(({ id, label: said }) => (
            <option key={id} value={id}>
              {said}
            </option>
          ))}
        </select>
      </label>
      {problem !== null && (
        <p role="alert" className={styles.problem}>
          {problem}
        </p>
      )}
    </About>
  )
}

/** Yes or no, where no is the answer until somebody says yes. */
export function CheckField({
  label,
  help,
  isAbsentWhenNot,
  ...of
}: FieldOf & {
  readonly label: string
  readonly help: HelpOf
  /** The document has no word for no. */
  readonly isAbsentWhenNot?: boolean
}) {
  const words = useMenuWords()
  const { value, answer } = useField(of)
  return (
    <About of={help}>
      <label className={styles.check}>
        <input
          type="checkbox"
          aria-description={words.help[help]}
          checked={value === true}
          onChange={({ target }) =>
            answer(target.checked ? true : isAbsentWhenNot ? undefined : false)
          }
        />
        {label}
      </label>
    </About>
  )
}
