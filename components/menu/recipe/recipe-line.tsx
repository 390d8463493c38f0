import { useEffect, useRef } from 'react'
import { wellsOf } from '#components/menu/line/drawn.ts'
import styles from '#components/menu/recipe/line.module.css'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { type Draft, rowOf, textIn, textsIn } from '#lib/editor/draft.ts'

const NONE: ReadonlySet<string> = new Set()

/** The line's pans in their order: those that hold it are lit, and another's recipe is a tap away. */
export function RecipeLine({
  draft,
  lit,
}: {
  readonly draft: Draft
  /** Components that are made of the recipe. */
  readonly lit: readonly string[]
}) {
  const words = useRecipeWords()
  const line = useRef<HTMLElement>(null)
  const shown = lit.join(' ')
  // biome-ignore lint/correctness/useExhaustiveDependencies: another pan is lit, and comes in sight
  useEffect(() => {
    line.current
      ?.querySelector('[data-lit]')
      ?.scrollIntoView({ inline: 'center', block: 'nearest' })
  }, [shown])
  return (
    <nav ref={line} className={styles.line} aria-label={words.line} data-swiped="">
      {wellsOf(draft, NONE).map(({ well, pans }) => (
        <ol key={well}>
          {pans.map(({ pan, component, name, lines }) => {
            const [recipe] = textsIn(rowOf(draft, 'component', component), 'recipes')
            const isLit = lit.includes(component)
            const said = lines.map((one) => <b key={one}>{one}</b>)
            return (
              <li
                key={pan}
                data-lit={isLit || undefined}
                data-notch={isLit ? component : undefined}
              >
                {recipe === undefined ? (
                  <span>{said}</span>
                ) : (
                  <a
                    href={`/menu/recipe?station=${draft.station}&recipe=${recipe}`}
                    aria-current={isLit || undefined}
                    aria-label={words.inPan(
                      name,
                      textIn(rowOf(draft, 'recipe', recipe), 'name') || recipe,
                    )}
                  >
                    {said}
                  </a>
                )}
              </li>
            )
          })}
        </ol>
      ))}
    </nav>
  )
}
