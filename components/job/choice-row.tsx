import forms from '#components/job/forms.module.css'

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

/** One of a few, each a large button. */
export function ChoiceRow<Id extends string>({
  legend,
  options,
  value,
  onChange,
}: ChoiceRowProps<Id>) {
  return (
    <fieldset className={forms.choices}>
      <legend>{legend}</legend>
      {options.map(({ id, label, more, off }) => (
        <button
          key={id}
          type="button"
          disabled={off === true}
          aria-pressed={value === id}
          onClick={() => onChange(id)}
        >
          <b>{label}</b>
          {more !== undefined && <span>{more}</span>}
        </button>
      ))}
    </fieldset>
  )
}
