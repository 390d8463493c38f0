import { useEffect } from 'react'

/**
 * The size of a roll's pages, millimetres: a page's size can't follow what is shown, so its rule is
 * made anew. null: sheets, whose rules stand in print.module.css.
 */
export const usePrintSize = (size: { readonly width: number; readonly height: number } | null) => {
  const rule =
    size === null
      ? null
      : `@page roll { size: ${size.width.toFixed(2)}mm ${size.height.toFixed(2)}mm; margin: 0 }`
  useEffect(() => {
    if (rule === null) return undefined
    // Made by script, so that the page's policy, which runs no styles of a page, has nothing to refuse.
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(rule)
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet)
    }
  }, [rule])
}
