import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Initials, Proof } from '#components/job/use-proof.ts'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { Field } from '#components/ui/field.tsx'

/** Who did it. */
export function InitialsField({ initials }: { readonly initials: Proof | Initials }) {
  const words = useFoodWords()
  return (
    <Field
      label={words.readings.initials}
      maxLength={6}
      autoCapitalize="characters"
      value={initials.text}
      onChange={(event) => initials.set(event.target.value)}
    />
  )
}

/** What only the person in charge may decide. */
export function InChargeField({ proof }: { readonly proof: Proof }) {
  const words = useFoodWords()
  return <PassphraseField label={words.forms.passphrase} value={proof.text} onChange={proof.set} />
}
