import { useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import { asItStands } from '#components/menu/pan/as-it-stands.ts'
import styles from '#components/menu/pan/made.module.css'
import { MadeOf } from '#components/menu/pan/made-of.tsx'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { isRecord, rowOf, textIn } from '#lib/editor/draft.ts'

const KINDS = [
  'ready',
  'not-cooked',
  'plant',
  'fish-or-meat',
  'ground-meat',
  'poultry-or-stuffed',
  'eggs-batch',
] as const

/** What is called so, what it is made of with its labels, and what kind of food it is here. */
export function MadeLeaf({ component }: { readonly component: string }) {
  const words = useMenuWords()
  const { draft, labels, take, onLabel } = useMenu()
  const [recipes, setRecipes] = useState<readonly string[]>([])
  const row = rowOf(draft, 'component', component)
  const food = isRecord(row?.food) ? row.food : undefined
  const name = textIn(row, 'name')
  const recipe = recipes.at(-1)
  const stands = asItStands(draft, labels, 'component', component)
  const outer = recipes.at(-2)
  return (
    <div className={styles.leaf}>
      <section className={styles.made}>
        {recipe === undefined ? (
          <TypedField
            entity="component"
            id={component}
            field="name"
            label={words.pan.name}
            help="name"
            onAnswer={(value) =>
              take({
                do: 'rename',
                entity: 'component',
                id: component,
                name: typeof value === 'string' ? value : '',
              })
            }
          />
        ) : (
          <div className={styles.recipe}>
            <Button kind="quiet" onClick={() => setRecipes(recipes.slice(0, -1))}>
              {words.pan.backFromRecipe(
                outer === undefined ? name : textIn(rowOf(draft, 'recipe', outer), 'name'),
              )}
            </Button>
            <TypedField
              entity="recipe"
              id={recipe}
              field="name"
              label={words.pan.recipe}
              help="name"
            />
          </div>
        )}
        <MadeOf
          key={recipe ?? component}
          entity={recipe === undefined ? 'component' : 'recipe'}
          id={recipe ?? component}
          onLabel={onLabel}
          onRecipe={(id) => setRecipes([...recipes, id])}
        />
      </section>
      <section className={styles.kind}>
        <About of="kind">
          <fieldset className={styles.kinds}>
            <legend>{words.pan.kind}</legend>
            {KINDS.map((kind) => (
              <button
                key={kind}
                type="button"
                aria-pressed={food?.kind === kind}
                onClick={() =>
                  take({
                    do: 'put',
                    entity: 'component',
                    id: component,
                    fields: { food: { ...(food ?? {}), kind } },
                  })
                }
              >
                {words.pan.kinds[kind]}
              </button>
            ))}
            {(food?.kind === null || food?.kind === undefined) && <p>{words.pan.kindUnsaid}</p>}
          </fieldset>
        </About>
        <Note kind={stands.unread.length > 0 ? 'no' : 'plain'}>
          <b>{words.pan.stands.head}</b>{' '}
          {textIn(row, 'name') === '' || (stands.unread.length === 0 && isBare(row))
            ? words.pan.stands.nothing
            : [
                stands.contains.length > 0 ? words.pan.stands.contains(stands.contains) : '',
                stands.mayContain.length > 0 ? words.pan.stands.mayContain(stands.mayContain) : '',
                stands.contains.length + stands.mayContain.length === 0 &&
                stands.unread.length === 0
                  ? words.pan.stands.none
                  : '',
                stands.unread.length > 0 ? words.pan.stands.unread(stands.unread) : '',
              ].join(' ')}
        </Note>
      </section>
    </div>
  )
}

const isBare = (row: ReturnType<typeof rowOf>): boolean =>
  !['ingredients', 'recipes'].some((field) => {
    const list = row?.[field]
    return Array.isArray(list) && list.length > 0
  })
