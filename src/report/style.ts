/** The page's look: light and dark by the reader's own setting, one column on a phone, two pages on paper. */
export const style = `:root{color-scheme:light dark;--paper:#fcfbf8;--ink:#20262c;--quiet:#56606a;--line:#d9d5cc;--lead:#0a5f66;--short:#9c1f17;--near:#7c4a00;--open:#4d5560;--fine:#1c6440;--shade:#f1eee7}
@media (prefers-color-scheme:dark){:root{--paper:#15181b;--ink:#ebe7df;--quiet:#aab3bb;--line:#3a4046;--lead:#74cdd0;--short:#ff9a8d;--near:#f2bf6c;--open:#b3bcc5;--fine:#86d6a6;--shade:#1f2428}}
*{box-sizing:border-box}body{font:1rem/1.5 system-ui,sans-serif;margin:0;color:var(--ink);background:var(--paper)}
main{max-width:72rem;margin:0 auto;padding:1rem 1.2rem 3rem;overflow-wrap:anywhere}thead th,.v,.n{overflow-wrap:normal}
h1{text-wrap:balance;font-size:1.5rem;line-height:1.2;margin:.4rem 0 .6rem}h2{font-size:1.15rem;margin:1.4rem 0 .4rem}h3{font-size:1rem;margin:1.2rem 0 .3rem}
.first{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,26rem);gap:0 2rem;align-items:start}
.answer{font-size:1.25rem;line-height:1.35;font-weight:650;margin:.2rem 0 .8rem}
table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.35rem .8rem .35rem 0;border-top:1px solid var(--line);font-weight:400}
thead th{color:var(--quiet);font-size:.85em;border-top:0;padding-bottom:.1rem}tbody th{font-weight:600}
.n{white-space:nowrap}.checks th[scope=row]{width:22%}.checks .why{width:42%}
.short{color:var(--short)}.near{color:var(--near)}.open{color:var(--open)}.fine{color:var(--fine)}
.v{white-space:nowrap;font-weight:600}small,.quiet{color:var(--quiet);font-size:.85em}
ul{padding-left:1.1rem;margin:.3rem 0}li{margin:.3rem 0}li b{font-weight:600}
.use{display:inline-block;inline-size:3.5rem;block-size:.5rem;border:1px solid var(--quiet);margin-inline-end:.4rem;vertical-align:middle}.use i{display:block;block-size:100%;background:currentColor}
summary{cursor:pointer;padding:.35rem 0;color:var(--lead)}summary h3{display:inline;margin:0 .5rem 0 0;color:var(--ink)}summary:focus-visible{outline:2px solid var(--lead)}details{border-top:1px solid var(--line)}section+details{margin-top:1.2rem}
figure{margin:0}figcaption{font-size:.85em;color:var(--quiet)}svg{display:block;width:100%;height:auto;max-height:34rem}
svg path{fill:none;stroke:var(--ink);stroke-linecap:round;stroke-linejoin:round}svg .figure{fill:var(--shade);stroke:var(--line);stroke-width:1.5}
svg .start path{stroke-width:1.3;opacity:.75}svg .end .other{stroke-width:2}svg .end .leading{stroke-width:4.5;stroke:var(--lead)}svg .way{stroke:var(--lead);stroke-width:2.4;stroke-dasharray:.1 6}
svg .scale{stroke-width:1.5}svg .word{fill:var(--ink);font:13px system-ui,sans-serif}
@media (max-width:46rem){.times{font-size:.85em}.times th,.times td{padding-right:.3rem}main{padding:.6rem .9rem 2rem}h1{font-size:1.25rem}.first{display:block}svg{max-height:22rem}
.checks,.checks tbody,.checks tr,.checks td,.checks th[scope=row],.checks .why{display:block;width:auto}.checks thead{position:absolute;inline-size:1px;block-size:1px;overflow:hidden;clip-path:inset(50%)}
.checks tr{border-top:1px solid var(--line);padding:.5rem 0}.checks td,.checks th{border:0;padding:0}.checks td.n{display:inline-block;margin-inline-end:.8rem}.checks td.n:nth-child(4):not(:empty)::before{content:"must be "}}
@media print{:root{color-scheme:light;--paper:#fff;--ink:#000;--quiet:#444;--line:#bbb;--lead:#0a5f66;--short:#9c1f17;--near:#7c4a00;--open:#4d5560;--fine:#1c6440;--shade:#f3f3f3}
@page{margin:14mm}html{font-size:9pt}body{line-height:1.35}main{max-width:none;padding:0}h2{margin:.8rem 0 .2rem}h3{margin:.5rem 0 .1rem}.first{grid-template-columns:minmax(0,1fr) 17rem}svg{max-height:15rem}
tr,figure,li,h2,h3{break-inside:avoid}h2,h3{break-after:avoid}th,td{padding:.15rem .5rem .15rem 0}summary{padding:.1rem 0;color:var(--ink);list-style:none}.use{print-color-adjust:exact}}`
