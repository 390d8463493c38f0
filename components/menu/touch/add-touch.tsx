import { useState } from 'react'
import styles from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { newId } from '#lib/editor/ids.ts'
import { CONTACT_KINDS } from '#lib/station/shapes/station-parts-schema.ts'
import type { ContactKind } from '#lib/station/station-document.ts'

/** Something that the drawing can't tell: what it is that they share; the pans are tapped above. */
export function AddTouch({
  components,
  onDone,
}: {
  readonly components: readonly string[]
  readonly onDone: () => void
}) {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const [kind, setKind] = useState<ContactKind>('board')
  const put = () => {
    const id = newId(draft, 'contact', `${kind} ${components.join(' ')}`)
    take({ do: 'put', entity: 'contact', id, fields: { kind, components: [...components] } })
    onDone()
  }
  return (
    <>
      <p>{words.item.addTouchWhat}</p>
      <fieldset className={styles.chips}>
        <legend className="visually-hidden">{words.item.addTouchWhat}</legend>
        {CONTACT_KINDS.map((one) => (
          <button key={one} type="button" aria-pressed={kind === one} onClick={() => setKind(one)}>
            {words.item.kinds[one]}
          </button>
        ))}
      </fieldset>
      <div className={styles.acts}>
        <Button kind="quiet" onClick={onDone}>
          {words.screen.close}
        </Button>
        <Button
          kind="main"
          lacks={components.length < 2 ? words.item.lacksTwo : null}
          onClick={put}
        >
          {words.item.putTouch}
        </Button>
      </div>
    </>
  )
}
