/** How the page of a comparison looks: one ink on the page's own ground, told by weight, dash and hatching. */
export const PAGE_STYLE = `
:root { color-scheme: light dark; --ground: #fff; --ink: #1a1a1a; --faint: #5c5c5c; --rule: #c9c9c9; --raised: #f4f3f0; }
@media (prefers-color-scheme: dark) {
  :root { --ground: #1b1b1a; --ink: #ececea; --faint: #a6a6a2; --rule: #474744; --raised: #262625; }
}
* { box-sizing: border-box; }
body { margin: 0; padding: 1rem 1.25rem 2rem; background: var(--ground); color: var(--ink); font: 15px/1.45 'Noto Sans', 'DejaVu Sans', Arial, Helvetica, sans-serif; }
h1 { font-size: 1.2rem; margin: 0 0 .75rem; }
h2 { font-size: 1.05rem; margin: 1.5rem 0 .25rem; }
h3 { font-size: .95rem; margin: 1rem 0 .25rem; }
h4 { font-size: .95rem; font-weight: 600; margin: .5rem 0 .1rem; }
.verdict { font-size: 1.1rem; font-weight: 600; margin: 0 0 .5rem; }
.columns { display: grid; grid-template-columns: minmax(18rem, 2fr) 3fr; gap: 1.25rem; align-items: start; }
ul { margin: 0; padding-left: 1.1rem; }
ul.marked { list-style: none; padding-left: 0; }
li { margin: .1rem 0; overflow-wrap: anywhere; }
.marked li { display: grid; grid-template-columns: 2.4rem 1fr; padding: 0 .25rem; }
.faint { color: var(--faint); }
[tabindex], [data-now], [data-was] { cursor: pointer; }
[tabindex]:focus-visible, button:focus-visible, input:focus-visible { outline: 2px solid var(--ink); outline-offset: 1px; }
.chosen { background: var(--raised); box-shadow: inset 3px 0 0 var(--ink); }
.drawn { position: sticky; top: .5rem; min-width: 0; }
.modes { display: flex; flex-wrap: wrap; gap: .35rem; margin-bottom: .5rem; }
button { font: inherit; color: var(--ink); background: var(--ground); border: 1px solid var(--rule); border-radius: 3px; padding: .15rem .6rem; cursor: pointer; }
button[aria-pressed='true'] { border-color: var(--ink); box-shadow: inset 0 -2px 0 var(--ink); font-weight: 600; }
.stage { position: relative; display: grid; gap: .5rem; height: min(78vh, 60rem); border: 1px solid var(--rule); overflow: hidden; touch-action: none; }
.stage[data-mode='beside'] { grid-template-columns: 1fr 1fr; }
.stage svg { width: 100%; height: 100%; min-width: 0; min-height: 0; display: block; fill: var(--ink); font-family: inherit; cursor: grab; }
.stage figure { margin: 0; min-width: 0; min-height: 0; display: grid; grid-template-rows: auto 1fr; }
.stage figcaption { padding: .1rem .5rem; color: var(--faint); }
.stage[data-mode='swipe'] figure { position: absolute; inset: 0; }
.stage[data-mode='swipe'] figure:first-child { clip-path: inset(0 calc(100% - var(--at, 50%)) 0 0); }
.stage[data-mode='swipe'] figure + figure { clip-path: inset(0 0 0 var(--at, 50%)); }
.stage[data-mode='swipe'] figure + figure figcaption { text-align: right; }
.stage[data-mode='swipe']::after { content: ''; position: absolute; inset: 0 auto 0 var(--at, 50%); border-left: 2px solid var(--ink); pointer-events: none; }
.stage input[type='range'] { position: absolute; inset: auto 0 .25rem 0; width: 100%; margin: 0; accent-color: var(--ink); }
svg [stroke='#000'] { stroke: var(--ink); }
svg [fill='#000'], svg text { fill: var(--ink); }
svg [fill='#fff'] { fill: var(--ground); }
svg .same { opacity: .75; }
svg .mark.chosen .ring { stroke-width: 3px; vector-effect: non-scaling-stroke; fill: var(--raised); }
.only-was :is(.now, .gained, .lost, .arrow, .key), .only-now :is(.was, .gained, .lost, .arrow, .key) { display: none; }
.only-was .was { stroke-dasharray: none; }
@media (max-width: 60rem) { .columns { grid-template-columns: minmax(0, 1fr); } .columns .drawn { order: -1; position: static; } .stage { height: 55vh; } }
@media (forced-colors: active) {
  :root { --ground: Canvas; --ink: CanvasText; --faint: CanvasText; --rule: CanvasText; --raised: Canvas; }
  svg .same { opacity: 1; }
  .chosen { outline: 2px solid Highlight; }
  svg .mark.chosen .ring { stroke: Highlight; }
  svg { forced-color-adjust: none; }
}
@media print { .modes { display: none; } .drawn { position: static; } .columns { display: block; } }
`;
