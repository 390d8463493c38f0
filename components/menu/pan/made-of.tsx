import { useId, useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import { namedOn, readOn } from '#components/menu/pan/as-it-stands.ts'
import styles from '#components/menu/pan/made-of.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { type MenuWords, useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { type Kind, recordsIn, rowOf, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import type { Labels } from '#lib/editor/http.ts'
import { newId } from '#lib/editor/ids.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'

/** What an ingredient's label says, in one or two short lines. */
function LabelSaid({
  label,
  words,
}: {
  readonly label: Labels[string] | undefined
  readonly words: MenuWords
}) {
  const date = readOn(label)
  if (date === null)
    return (
      <span data-unread="">
        <b>{words.pan.unread}</b> {words.pan.unreadWhy}
      </span>
    )
  const { contains, mayContain } = namedOn(label)
  return (
    <span>
      <b>{words.pan.named(contains, mayContain)}</b> {words.pan.read(words.date(date))}
    </span>
  )
}

interface MadeOfProps {
  readonly entity: 'component' | 'recipe'
  readonly id: string
  readonly onLabel: (ingredient: string) => void
  readonly onRecipe: (recipe: string) => void
}

/** What a component or a recipe is made of: bought things with their labels, and recipes. */
export function MadeOf({ entity, id, onLabel, onRecipe }: MadeOfProps) {
  const words = useMenuWords()
  const { draft, labels, idsOfBefore, take } = useMenu()
  const [typed, setTyped] = useState('')
  const known = useId()
  const row = rowOf(draft, entity, id)
  const name = textIn(row, 'name')
  const lines = recordsIn(row, 'lines')
  const card = textIn(row, 'yields')
  const makes = card.trim() === '' ? null : typedYield(card)
  const of = {
    ingredient: textsIn(row, 'ingredients'),
    recipe: textsIn(row, 'recipes'),
  }
  const isEmpty = of.ingredient.length + of.recipe.length === 0

  const put = (kind: 'ingredient' | 'recipe', called: string) => {
    const said = called.trim()
    if (said === '') return
    const same = rowsOf(draft, kind).find(
      (one) => textIn(one.row, 'name').toLowerCase() === said.toLowerCase(),
    )
    const which = same?.id ?? newId(draft, kind, said, idsOfBefore)
    const field = `${kind}s`
    if (of[kind].includes(which)) return setTyped('')
    take(
      ...(same
        ? []
        : [{ do: 'put' as const, entity: kind as Kind, id: which, fields: { name: said } }]),
      { do: 'put', entity, id, fields: { [field]: [...of[kind], which] } },
    )
    setTyped('')
  }
  const add = (called: string) => {
    const isRecipe = rowsOf(draft, 'recipe').some(
      (one) => textIn(one.row, 'name').toLowerCase() === called.trim().toLowerCase(),
    )
    put(isRecipe ? 'recipe' : 'ingredient', called)
  }
  const takeOut = (kind: 'ingredient' | 'recipe', which: string) =>
    take({
      do: 'put',
      entity,
      id,
      fields: {
        [`${kind}s`]: of[kind].filter((one) => one !== which),
        lines: lines.filter((line) => line.of !== which),
      },
    })
  const amountOf = (which: string) =>
    textIn(
      lines.find((line) => line.of === which),
      'typed',
    )
  const sayAmount = (which: string, text: string) =>
    take({
      do: 'put',
      entity,
      id,
      fields: {
        lines: [
          ...lines.filter((line) => line.of !== which),
          ...(text.trim() === '' ? [] : [{ of: which, typed: text }]),
        ],
      },
    })
  const part = (kind: 'ingredient' | 'recipe', which: string) => {
    const called = textIn(rowOf(draft, kind, which), 'name') || which
    const amount = amountOf(which)
    const read = amount.trim() === '' ? null : typedAmount(amount)
    const comesTo = read?.ok && read.amount ? words.understood(read.amount) : ''
    return (
      <li
        key={which}
        data-unread={kind === 'ingredient' && readOn(labels[which]) === null ? '' : undefined}
      >
        <button
          type="button"
          className={styles.part}
          aria-label={
            kind === 'recipe' ? words.pan.openRecipe(called) : words.pan.readLabel(called)
          }
          onClick={() => (kind === 'recipe' ? onRecipe(which) : onLabel(which))}
        >
          <b>{called}</b>
          {kind === 'recipe' ? (
            <span>{words.pan.recipe}</span>
          ) : (
            <LabelSaid label={labels[which]} words={words} />
          )}
        </button>
        <About of="amount">
          <input
            aria-label={words.pan.amount(called)}
            aria-description={words.help.amount}
            aria-invalid={read?.ok === false || undefined}
            placeholder={words.pan.amountHint}
            maxLength={60}
            value={amount}
            onChange={({ target }) => sayAmount(which, target.value)}
          />
        </About>
        <button
          type="button"
          className={styles.out}
          aria-label={words.pan.takeOut(called)}
          onClick={() => takeOut(kind, which)}
        >
          ×
        </button>
        {read?.ok === false && <p role="alert">{words.amountProblem(read)}</p>}
        {comesTo !== '' && <p data-understood="">{comesTo}</p>}
      </li>
    )
  }
  return (
    <section className={styles.made} aria-label={words.pan.madeOf}>
      {!isEmpty && (
        <ul>
          {of.recipe.map((which) => part('recipe', which))}
          {of.ingredient.map((which) => part('ingredient', which))}
        </ul>
      )}
      {isEmpty && name !== '' && (
        <Button sub={words.pan.straightWhy(name)} onClick={() => add(name)}>
          {words.pan.straight}
        </Button>
      )}
      <form
        className={styles.add}
        onSubmit={(event) => {
          event.preventDefault()
          add(typed)
        }}
      >
        <About of="made">
          <Field
            label={words.pan.putIn}
            aria-description={words.help.made}
            list={known}
            maxLength={60}
            value={typed}
            onChange={({ target }) => setTyped(target.value)}
            side={
              <>
                <Button type="submit" lacks={null} disabled={typed.trim() === ''}>
                  {words.pan.add}
                </Button>
                {typed.trim() !== '' && (
                  <Button kind="quiet" onClick={() => put('recipe', typed)}>
                    {words.pan.asRecipe}
                  </Button>
                )}
              </>
            }
          />
        </About>
        <datalist id={known}>
          {[...rowsOf(draft, 'ingredient'), ...rowsOf(draft, 'recipe')].map((one) => (
            <option key={one.id} value={textIn(one.row, 'name')} />
          ))}
        </datalist>
      </form>
      {entity === 'recipe' && (
        <>
          <TypedField
            entity="recipe"
            id={id}
            field="yields"
            label={words.pan.yields}
            help="yields"
          />
          {makes?.ok === false && (
            <p role="alert" className={styles.wrong}>
              {words.amountProblem(makes)}
            </p>
          )}
          <a className={styles.away} href={`/menu/recipe?station=${draft.station}&recipe=${id}`}>
            {words.pan.atAnyYield}
          </a>
        </>
      )}
    </section>
  )
}
