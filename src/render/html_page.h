// html_page.h -- the page a Document is poured into: a mustache template with its style. No script, no network: the
// page is a file that can be mailed, printed, and read on a phone, by day and by night.
#pragma once

namespace kerfbook::render {

/// {{name}} is escaped by the template library; {{{chart}}} and {{paper}} are made here and hold no user text but what
/// chart.cpp has escaped; {{{running}}} is the title as a string of CSS, escaped in html.cpp.
inline constexpr const char* kPage = R"page(<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{title}}</title>
<style>
@page { size: {{paper}}; margin: 13mm 14mm 15mm;
  @bottom-left { content: {{{running}}}; font: 8pt "Liberation Sans", Arial, sans-serif; color: #555; vertical-align: top; padding-top: 3mm; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt "Liberation Sans", Arial, sans-serif; color: #555;
    vertical-align: top; padding-top: 3mm; } }
:root { color-scheme: light dark; --ink: #1d1a16; --soft: #6b6459; --rule: #cfc6b8; --paper: #fffdf9; --band: #f6f1e8;
  --k0: #8a5a2b; --k1: #3f6f63; --k2: #b58a3c; --k3: #6a5a83; --k4: #94504c; }
@media (prefers-color-scheme: dark) { :root { --ink: #ece6db; --soft: #a69d8f; --rule: #4a443b; --paper: #1b1917;
  --band: #25221e; --k0: #cf9a63; --k1: #7fb5a6; --k2: #dcb869; --k3: #ab9bc7; --k4: #d48f88; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.6rem 1.2rem 3rem; max-width: 84rem; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.45 "Liberation Sans", "DejaVu Sans", Arial, Helvetica, sans-serif; font-variant-numeric: tabular-nums;
  overflow-wrap: anywhere; }
h1 { font-size: 1.75rem; line-height: 1.2; margin: 0 0 .2rem; }
h2 { font-size: 1.2rem; margin: 2rem 0 .5rem; }
.under { color: var(--soft); margin: 0 0 1.2rem; }
.wide { overflow-x: auto; } .full table { width: 100%; }
body.paper { max-width: 54rem; } .full td:last-child, .full th:last-child { padding-right: 0; } .full td { max-width: none; }
table { border-collapse: collapse; min-width: 24rem; }
th, td { padding: .3rem .7rem; text-align: left; vertical-align: top; }
th:first-child, td:first-child, .many th:first-child, .many td:first-child { padding-left: 0; }
thead th { vertical-align: bottom; border-bottom: 2px solid var(--ink); font-weight: 600; line-height: 1.2; }
th .unit { display: block; color: var(--soft); font-weight: 400; font-size: .875em; }
tbody tr { border-bottom: 1px solid var(--rule); }
tbody tr:last-child { border-bottom: 0; }
th, td { overflow-wrap: normal; } td { max-width: 26rem; white-space: pre-line; } .x { overflow-wrap: anywhere; min-width: 8rem; }
.n { text-align: right; } td.n, .d, .w { white-space: nowrap; }
tfoot td { border-top: 2px solid var(--ink); font-weight: 700; }
tfoot tr + tr td { border-top: 0; }
.many { font-size: .9375rem; } .many th, .many td { padding: .3rem .45rem; }
tr.struck td { text-decoration: line-through; color: var(--soft); }
.ruled { width: 100%; table-layout: fixed; } .ruled td, .ruled th { border: 1px solid var(--ink); height: 2.1rem; padding: .2rem .6rem; }
.ruled td:first-child, .ruled th:first-child { padding-left: .6rem; } .ruled th { vertical-align: middle; }
.figures { display: grid; grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr)); gap: 1rem 1.6rem; margin: 0; }
.figures div { border-top: 2px solid var(--ink); padding-top: .35rem; }
.figures dt { color: var(--soft); font-size: .9375rem; }
.figures dd { margin: 0; font-size: 1.7rem; line-height: 1.2; overflow-wrap: anywhere; }
.figures dd.words { font-size: 1.1rem; padding-top: .45rem; }
.figures .unit { color: var(--soft); font-size: .95rem; }
.letter { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 1.2rem 2.5rem; margin: 0 0 1.4rem; }
.letter > div { flex: 1 1 17rem; min-width: 0; }
img.logo { display: block; max-height: 4.5rem; max-width: min(16rem, 100%); margin: 0 0 .7rem; }
.party { margin: 0 0 1.2rem; white-space: pre-line; unicode-bidi: plaintext; text-align: left; } .party:last-child { margin: 0; }
.party .what { color: var(--soft); font-size: .875rem; } .party b { font-size: 1.15rem; }
.head { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1.2rem; margin: .5rem 0 0; }
.head dt { color: var(--soft); } .head dd { margin: 0; } .head dd.fill { border-bottom: 1px solid var(--soft); min-height: 1.5em; }
.sums { margin: .8rem 0 0 auto; min-width: 18rem; } .sums td { padding: .2rem 0 .2rem 1.6rem; overflow-wrap: anywhere; }
.sums tr { border: 0; } .sums tr.strong td { font-weight: 700; font-size: 1.15rem; border-top: 2px solid var(--ink); }
.line { margin: .2rem 0; }
body:not(.paper) .lead { font-size: 1.15rem; max-width: 46rem; }
.note, .foot p { color: var(--soft); font-size: .9375rem; max-width: 62rem; }
.foot { margin-top: 2rem; border-top: 1px solid var(--rule); }
.signs { display: flex; flex-wrap: wrap; column-gap: 2rem; }
.sign { display: flex; gap: 1.2rem; flex: 1 1 15rem; margin-top: 3rem; } .sign span { flex: 2; min-width: 0; border-top: 1px solid var(--ink); padding-top: .25rem;
  color: var(--soft); font-size: .9375rem; } .sign span + span { flex: 1; }
.chart { width: 100%; max-width: 50rem; height: auto; display: block; margin: 1rem 0 .2rem; }
.chart text { fill: var(--soft); font-size: 14px; } .chart .rule { stroke: var(--rule); } .chart .base { stroke: var(--ink); }
.c0 { fill: var(--k0); } .c1 { fill: var(--k1); } .c2 { fill: var(--k2); } .c3 { fill: var(--k3); } .c4 { fill: var(--k4); }
.l0, .l1, .l2, .l3, .l4 { fill: none; stroke-width: 2.5; }
.l0 { stroke: var(--k0); } .l1 { stroke: var(--k1); } .l2 { stroke: var(--k2); } .l3 { stroke: var(--k3); } .l4 { stroke: var(--k4); }
.trend { stroke: var(--ink); stroke-dasharray: 6 5; stroke-width: 1.5; }
@media (max-width: 78rem) { .many .w { white-space: pre-line; } }
@media (max-width: 36rem) { .chart { min-width: 38rem; }
  .wide th:first-child, .wide td:first-child { position: sticky; left: 0; background: var(--paper) padding-box; } body { padding: 1rem .8rem 2rem; } th, td { padding: .4rem .5rem; } .figures dd { font-size: 1.5rem; }
  .party b { font-size: 1.05rem; } table { min-width: 0; } table.ruled { min-width: 34rem; } }
@media screen and (max-width: 36rem) { /* priced lines are read one under the other: what it is, then how much at which rate, and the sum at the right */
  .full table { min-width: 0; } .full table, .full tbody, .full tfoot { display: block; } .full thead { display: none; } .full tr { display: flex; flex-wrap: wrap; gap: 0 .6rem; padding: .4rem 0; }
  .full td, .full td:first-child { padding: 0; position: static; } .full td:empty { display: none; } .full td.main { flex: 1 0 100%; order: -1; } .full td:last-child { margin-left: auto; }
  .full td[data-said]::before { content: attr(data-said) " "; color: var(--soft); font-size: .875em; }
  .sums { width: 100%; min-width: 0; } .sums td { padding-left: 0; } }
@media print { :root { font-size: 10pt; --ink: #000; --soft: #444; --rule: #bbb; --paper: #fff; --band: #fff; } body { padding: 0; max-width: none;
  font-size: 1rem; line-height: 1.35; } .wide { overflow: visible; } thead { display: table-header-group; } tfoot { display: table-row-group; }
  tr, .figures div, .chart, .sums, .sign, .keep, .end { break-inside: avoid; } h2 { margin: 1rem 0 .25rem; break-after: avoid; } .page { break-before: page; }
  .paper .end { break-before: avoid; } .paper .note, .paper .foot p { margin: .4rem 0; } .foot { margin-top: 1rem; } .sign { margin-top: 2.4rem; }
  th, td { padding: 1.5pt 6pt; } .many { font-size: 8pt; } .many .w { white-space: pre-line; } .many th, .many td { padding: 2pt 3pt; }
  .ruled td, .ruled th { height: {{row}}; padding: 0 5pt; } }
</style>{{#one_page}}
<style>
@media print { :root { font-size: 8.5pt; } h1 { margin: 0; } p { margin: 2pt 0; } section { margin: 4pt 0; } th, td { padding: .3pt 6pt; line-height: 1.2; } }
</style>{{/one_page}}
</head>
<body{{#has_parties}} class="paper"{{/has_parties}}>
{{#has_parties}}<div class="letter"><div>
{{#logo}}<img class="logo" alt="" src="{{logo}}">{{/logo}}
{{#parties}}<p class="party" dir="auto">{{#heading}}<span class="what">{{heading}}</span>
{{/heading}}{{#first}}<b>{{first}}</b>
{{/first}}{{lines}}</p>
{{/parties}}</div><div>{{/has_parties}}
<h1>{{title}}</h1>
{{#subtitle}}<p class="under">{{subtitle}}</p>{{/subtitle}}
{{#has_head}}<dl class="head">{{#head}}<dt>{{label}}</dt><dd{{#fill}} class="fill"{{/fill}}>{{value}}</dd>{{/head}}</dl>{{/has_head}}
{{#has_parties}}</div></div>{{/has_parties}}
{{#lead}}<p class="lead">{{words}}</p>{{/lead}}
{{#tables}}<section{{#how}} class="{{how}}"{{/how}}>
{{#title}}<h2>{{title}}</h2>{{/title}}
{{#empty}}<p class="note">{{empty}}</p>{{/empty}}
{{#lines}}<h2>{{heading}}</h2>
{{#rows}}<p class="line">{{words}}</p>
{{/rows}}{{/lines}}
{{#figures}}<dl class="figures">{{#cells}}<div><dt>{{heading}}</dt><dd{{#words}} class="words"{{/words}}>{{text}}{{#unit}} <span class="unit">{{unit}}</span>{{/unit}}</dd></div>{{/cells}}</dl>{{/figures}}
{{#body}}<div class="wide{{#has_sums}} full{{/has_sums}}"><table{{#kind}} class="{{kind}}"{{/kind}}>
{{#has_widths}}<colgroup>{{#widths}}<col style="width: {{percent}}%">{{/widths}}</colgroup>
{{/has_widths}}<thead><tr>{{#columns}}<th{{#right}} class="n"{{/right}}>{{heading}}{{#unit}}<span class="unit">{{unit}}</span>{{/unit}}</th>{{/columns}}</tr></thead>
<tbody>
{{#rows}}<tr{{#struck}} class="struck"{{/struck}}>{{#cells}}<td{{#kind}} class="{{kind}}"{{/kind}}{{#said}} data-said="{{said}}"{{/said}}{{#across}} colspan="{{across}}"{{/across}}>{{#struck}}<s>{{text}}</s>{{/struck}}{{^struck}}{{text}}{{/struck}}</td>{{/cells}}</tr>
{{/rows}}</tbody>
{{#has_foot}}<tfoot>{{#foot}}<tr>{{#cells}}<td{{#kind}} class="{{kind}}"{{/kind}}>{{text}}</td>{{/cells}}</tr>{{/foot}}</tfoot>
{{/has_foot}}</table></div>{{/body}}
{{#has_sums}}<table class="sums"><tbody>{{#sums}}<tr{{#strong}} class="strong"{{/strong}}><td class="label">{{label}}</td><td class="n">{{value}}</td></tr>{{/sums}}</tbody></table>{{/has_sums}}
{{#has_chart}}<div class="wide">{{{chart}}}</div>{{/has_chart}}
{{#notes}}<p class="note">{{words}}</p>{{/notes}}
</section>
{{/tables}}
<div class="end">{{#has_foot}}<div class="foot">{{#foot}}<p>{{words}}</p>{{/foot}}</div>{{/has_foot}}
<div class="signs">{{#signatures}}<div class="sign"><span>{{who}}</span><span>Date</span></div>{{/signatures}}</div></div>
</body>
</html>
)page";

}  // namespace kerfbook::render
