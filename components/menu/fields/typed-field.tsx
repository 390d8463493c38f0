import { type ReactNode, useState } from 'react'
import { About, type HelpOf } from '#components/menu/fields/help.tsx'
import { fromTyped, type TypedAs, toTyped } from '#components/menu/fields/typed.ts'
import { type FieldOf, useField } from '#components/menu/fields/use-field.ts'
import { useMenuWords } from '#components/menu/words.tsx'
import { Field } from '#components/ui/field.tsx'

interface TypedFieldProps extends FieldOf {
  readonly label: string
  readonly help: HelpOf
  readonly as?: TypedAs
  /** What stands beside it: a unit. */
  readonly unit?: ReactNode
  readonly type?: 'text' | 'time'
  /** Left empty it is answered: nobody weighed it, or there is none. */
  readonly isNullWhenEmpty?: boolean
  /** What stands in it, where it isn't the row's own value. */
  readonly shown?: string
  /** Where answering is more than writing the value. */
  readonly onAnswer?: (value: ReturnType<typeof fromTyped>) => void
}

/** One thing of a row to type; kept with each letter, also where it can't be so. */
export function TypedField({
  label,
  help,
  as = 'text',
  unit,
  type = 'text',
  isNullWhenEmpty,
  shown,
  onAnswer,
  ...of
}: TypedFieldProps) {
  const words = useMenuWords()
  const { value, problem, answer } = useField(of)
  const [typing, setTyping] = useState<string | null>(null)
  // What somebody else answered meanwhile is shown, also while the hand is still here.
  const isOwn =
    typing !== null && (shown !== undefined || (fromTyped(typing, as) ?? null) === (value ?? null))
  return (
    <About of={help}>
      <Field
        label={label}
        type={type}
        inputMode={as === 'text' ? 'text' : as === 'whole' ? 'numeric' : 'decimal'}
        aria-description={words.help[help]}
        maxLength={300}
        value={isOwn ? typing : (shown ?? toTyped(value, as))}
        problem={problem}
        side={unit}
        onChange={({ target }) => {
          setTyping(target.value)
          const typed = fromTyped(target.value, as)
          if (onAnswer) onAnswer(typed)
          else answer(typed === undefined && isNullWhenEmpty ? null : typed)
        }}
        onBlur={() => setTyping(null)}
      />
    </About>
  )
}
