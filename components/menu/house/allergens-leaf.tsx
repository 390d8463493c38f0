import { useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import { PickField } from '#components/menu/fields/pick-field.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { textsIn } from '#lib/editor/draft.ts'
import { slug } from '#lib/editor/ids.ts'

const HOUSE = { entity: 'house', id: 'house' } as const

/** Which allergens are asked about, and what it means when a label doesn't say. */
export function AllergensLeaf() {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const [typed, setTyped] = useState('')
  const own = textsIn(draft.rows.house, 'ownAllergens')
  const put = (ownAllergens: readonly string[]) =>
    take({ do: 'put', ...HOUSE, fields: { ownAllergens } })
  const code = slug(typed)
  return (
    <div className={styles.grid}>
      <PickField
        {...HOUSE}
        field="allergenSet"
        label={words.house.allergenSet}
        help="allergenSet"
        ways={[
          { id: 'us-9', label: words.house.sets['us-9'] },
          { id: 'eu-14', label: words.house.sets['eu-14'] },
        ]}
      />
      <form
        onSubmit={(event) => {
          event.preventDefault()
          if (code === '' || own.includes(code)) return
          put([...own, code])
          setTyped('')
        }}
      >
        <About of="ownAllergens">
          <Field
            label={words.house.own}
            aria-description={words.help.ownAllergens}
            maxLength={40}
            value={typed}
            onChange={({ target }) => setTyped(target.value)}
            side={
              <Button type="submit" disabled={code === ''}>
                {words.house.addOwn}
              </Button>
            }
          />
          {own.length > 0 && (
            <div className={styles.chips}>
              {own.map((one) => (
                <button
                  key={one}
                  type="button"
                  aria-label={words.house.takeOwn(one.replaceAll('-', ' '))}
                  onClick={() => put(own.filter((other) => other !== one))}
                >
                  {one.replaceAll('-', ' ')} ×
                </button>
              ))}
            </div>
          )}
        </About>
      </form>
      <PickField
        {...HOUSE}
        field="cautions"
        label={words.house.cautions}
        help="cautions"
        ways={[
          { id: 'ask', label: words.house.cautionWays.ask },
          { id: 'block', label: words.house.cautionWays.block },
        ]}
      />
      <PickField
        {...HOUSE}
        field="notListed"
        label={words.house.notListed}
        help="notListed"
        ways={[
          { id: 'fits', label: words.house.notListedWays.fits },
          { id: 'caution', label: words.house.notListedWays.caution },
        ]}
      />
      <TypedField
        {...HOUSE}
        field="readAgainDays"
        as="whole"
        label={words.house.readAgain}
        help="readAgain"
      />
    </div>
  )
}
