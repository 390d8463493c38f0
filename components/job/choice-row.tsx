import styles from '#components/job/job.module.css'
import { Button } from '#components/ui/button.tsx'

interface ChoiceRowProps<Id extends string> {
  readonly legend: string
  readonly options: readonly {
    readonly id: Id
    readonly label: string
    readonly more?: string
    readonly off?: boolean
  }[]
  readonly value: Id | null
  readonly onChange: (id: Id) => void
}

/** One of several that need words of their own, each a large button. */
export function ChoiceRow<Id extends string>({
  legend,
  options,
  value,
  onChange,
}: ChoiceRowProps<Id>) {
  return (
    <fieldset className={styles.choices}>
      <legend>{legend}</legend>
      {options.map(({ id, label, more, off }) => (
        <Button
          key={id}
          disabled={off === true}
          aria-pressed={value === id}
          sub={more}
          onClick={() => onChange(id)}
        >
          {label}
        </Button>
      ))}
    </fieldset>
  )
}
