// What tests read off the sheet.

/** Waits until picture, check and twin are those of what was asked for. */
export async function ready(d) {
  await d.waitFor(() => document.querySelector('.title-block .verdict') && !document.querySelector('.title-block.behind') && !document.querySelector('.progress') && document.querySelector('.flipper .front canvas')?.width > 100 && document.querySelector('.twin canvas'));
}

/** Opens a section of the column. */
export async function section(d, id) {
  await d.waitFor((s) => document.getElementById(s), id);
  await d.evaluate((s) => {
    const el = document.getElementById(s);
    const details = el.matches('details') ? el : el.querySelector('details');
    if (details) details.open = true;
    else el.querySelector('[aria-expanded=false]')?.click();
  }, id);
}

/** Asks for a number of enamels. */
export async function pick(d, n) {
  await section(d, 'colours');
  await d.evaluate((value) => document.querySelector(`#colours input[name=count][value="${value}"]`).click(), n);
}

export const counted = async (d) => Number(/(\d+) enamel/.exec(await d.read('.title-block'))?.[1]);

export const findings = (d) => d.evaluate(() => document.querySelectorAll('#metal .findings > li').length);

export async function sizeOf(d) {
  const [, w, h] = /([\d.]+)\s×\s([\d.]+)\smm/.exec(await d.read('.title-block')) ?? [];
  return { w: Number(w), h: Number(h) };
}
