import { type FormEvent, useState } from 'react'
import styles from '#components/menu/label/panel.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'

interface AnotherProductProps {
  readonly refused: string | null
  readonly onAdd: (maker: string, pack: string) => void
}

/** A product that comes instead: its maker and its pack tell it from the one in use. */
export function AnotherProduct({ refused, onAdd }: AnotherProductProps) {
  const words = useLabelFormWords()
  const [maker, setMaker] = useState('')
  const [pack, setPack] = useState('')
  const isNamed = maker.trim() !== '' || pack.trim() !== ''
  const add = (event: FormEvent) => {
    event.preventDefault()
    if (isNamed) onAdd(maker.trim(), pack.trim())
  }
  return (
    <form className={styles.another} onSubmit={add}>
      <p>{words.anotherWhy}</p>
      <Field
        label={words.maker}
        maxLength={60}
        value={maker}
        onChange={({ target }) => setMaker(target.value)}
      />
      <Field
        label={words.pack}
        maxLength={60}
        value={pack}
        onChange={({ target }) => setPack(target.value)}
      />
      <Button type="submit" kind="main" lacks={isNamed ? null : words.noMakerOrPack}>
        {words.addProduct}
      </Button>
      <p role="alert">{refused}</p>
    </form>
  )
}
