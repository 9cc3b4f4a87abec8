/** The page's one style sheet: one column, the reader's own type, black and white or white and black, nothing that moves. */
import { createHash } from 'node:crypto';

export const STYLE = `
:root{color-scheme:light dark;--ground:#fff;--ink:#1b1b1b;--soft:#555;--line:#8a8a8a;--link:#0b4f8a}
@media (prefers-color-scheme:dark){:root{--ground:#161616;--ink:#eaeaea;--soft:#b4b4b4;--line:#7d7d7d;--link:#9cc9f5}}
*{box-sizing:border-box}
body{margin:0 auto;padding:0 1rem 3rem;max-width:44rem;background:var(--ground);color:var(--ink);font:100%/1.5 system-ui,sans-serif;overflow-wrap:anywhere}
h1{font-size:1.5rem;line-height:1.25;margin:1.25rem 0 .5rem}
h2{font-size:1.25rem;line-height:1.3;margin:2.5rem 0 .75rem;border-top:2px solid var(--ink);padding-top:.5rem}
h3{font-size:1.0625rem;margin:1.5rem 0 .25rem}
h4{font-size:1rem;margin:1rem 0 .25rem}
p,ul,ol,dl,figure{margin:.25rem 0 .75rem}
ul,ol{padding-left:1.25rem}
ol.clock{list-style:none;padding:0}
ol.clock>li{padding-left:4.25rem;text-indent:-4.25rem}
ol.clock>li>*{text-indent:0}
ol.clock b{display:inline-block;min-width:3.75rem;margin-right:.5rem;font-variant-numeric:tabular-nums;text-indent:0}
a{color:var(--link);text-underline-offset:.15em}
nav a,.links a{display:inline-block;padding:.375rem 0}
nav ul{display:flex;flex-wrap:wrap;gap:0 1.25rem}
nav ul,ul.links{list-style:none;padding:0}
:focus-visible{outline:3px solid var(--link);outline-offset:2px}
.skip{position:absolute;left:-100vw}
.skip:focus{position:static;display:inline-block;padding:.5rem 0}
.soft{color:var(--soft)}
.alarm{border:3px solid var(--ink);padding:.5rem .75rem;margin:1rem 0}
pre{white-space:pre-wrap;margin:.5rem 0;font-size:.875rem}
svg{display:block;width:100%;height:auto}
.rings{display:grid;grid-template-columns:repeat(auto-fit,minmax(16rem,1fr));gap:1rem}
.rings figure{margin:0}
figcaption{font-weight:600;margin-bottom:.25rem}
.wide{overflow-x:auto}
.wide svg{min-width:34rem}
.qr svg{width:15rem;max-width:100%;background:#fff}
dt{font-weight:600}
dd{margin:0 0 .75rem}
summary{padding:.375rem 0;cursor:pointer}
code{font-size:.9375em}
@media print{:root{--ground:#fff;--ink:#000;--soft:#333;--line:#666;--link:#000;color-scheme:light}body{max-width:none;font-size:10.5pt}nav,.skip,.qr,.screen{display:none}h2,h3,h4{break-after:avoid}figure,li,dd{break-inside:avoid}details::details-content{content-visibility:visible;height:auto}}
`.trim();

/** As a content security policy names it. */
export const STYLE_HASH = `sha256-${createHash('sha256').update(STYLE).digest('base64')}`;
