"""What the catalogue does in a browser: search, filters and orders, kept in the address; nothing is fetched.

Without it, every card is there, design by design, and no control is shown.
"""

SCRIPT = """\
'use strict';
(() => {
  const $ = (one) => document.querySelector(one);
  const $$ = (all) => [...document.querySelectorAll(all)];
  const cards = $$('.card'), rows = $$('.paper tbody tr'), groups = $$('.group');
  const form = $('#find'), count = $('#count'), none = $('.empty'), flat = $('#in-order'), clear = $('#clear');
  const hues = $$('.hues button'), selects = $$('#find select'), search = $('#search');
  const homes = new Map(cards.map((card) => [card, card.parentElement]));
  const order = new Map(cards.map((card, at) => [card, at]));
  const row = new Map(cards.map((card, at) => [card, rows[at]]));
  const words = (text) => text.toLocaleLowerCase().normalize('NFD').replace(/\\p{M}/gu, '');
  const texts = new Map(cards.map((card) => [card, words(card.dataset.text)]));
  const sorts = {
    design: null,
    name: (a, b) => a.dataset.name.localeCompare(b.dataset.name),
    hue: (a, b) => a.dataset.hueOrder - b.dataset.hueOrder,
    sku: (a, b) => a.dataset.sku.localeCompare(b.dataset.sku),
    price: (a, b) => (a.dataset.price || Infinity) - (b.dataset.price || Infinity),
  };

  function wished() {
    const wish = new URLSearchParams();
    if (search.value.trim()) wish.set('q', search.value.trim());
    for (const select of selects) if (select.selectedIndex > 0) wish.set(select.name, select.value);
    for (const hue of hues) if (hue.getAttribute('aria-pressed') === 'true') wish.append('hue', hue.value);
    return wish;
  }

  function fits(card, wish) {
    const asked = words(wish.get('q') || '').split(/\\s+/).filter(Boolean);
    if (!asked.every((word) => texts.get(card).includes(word))) return false;
    const families = wish.getAll('hue');
    if (families.length && !families.includes(card.dataset.hue)) return false;
    for (const [key, value] of wish) {
      if (key === 'q' || key === 'hue' || key === 'sort') continue;
      if (!JSON.parse(card.dataset.facets)[key]?.includes(value)) return false;
    }
    return true;
  }

  function show() {
    const wish = wished();
    let shown = 0;
    for (const card of cards) {
      const seen = fits(card, wish);
      card.hidden = row.get(card).hidden = !seen;
      shown += seen;
    }
    arrange(sorts[wish.get('sort') || 'design']);
    for (const group of groups) group.hidden = !group.querySelector('.card:not([hidden])');
    none.hidden = shown > 0;
    clear.hidden = ![...wish.keys()].some((key) => key !== 'sort');
    count.textContent = shown === cards.length ? `${shown} pads` : `${shown} of ${cards.length} pads`;
    const hash = wish.toString();
    if (hash !== location.hash.slice(1)) {
      history.replaceState(null, '', hash ? `#${hash}` : location.pathname + location.search);
    }
  }

  let last;
  function arrange(sort) {
    if (sort === last) return;
    last = sort;
    const sorted = [...cards].sort((a, b) => (sort ? sort(a, b) : 0) || order.get(a) - order.get(b));
    for (const card of sorted) (sort ? flat : homes.get(card)).append(card);
    $('.paper tbody').append(...sorted.map((card) => row.get(card)));
    flat.parentElement.hidden = !sort;
  }

  function take() {
    // A link inside the page, as that to the pads, is no view: the one that is shown stays.
    if (document.getElementById(location.hash.slice(1))) { show(); return; }
    const wish = new URLSearchParams(location.hash.slice(1));
    search.value = wish.get('q') || '';
    for (const select of selects) {
      const value = wish.get(select.name);
      select.selectedIndex = Math.max(0, [...select.options].findIndex((one) => one.value === value));
    }
    for (const hue of hues) hue.setAttribute('aria-pressed', String(wish.getAll('hue').includes(hue.value)));
    show();
  }

  const scheme = $('#scheme');
  const named = { '': 'as the system', light: 'light', dark: 'dark' };
  const next = { '': 'light', light: 'dark', dark: '' };
  function paint(value) {
    if (value) document.documentElement.dataset.scheme = value;
    else delete document.documentElement.dataset.scheme;
    scheme.textContent = `Colours: ${named[value]}`;
    scheme.value = value;
  }
  scheme.addEventListener('click', () => {
    paint(next[scheme.value]);
    try { localStorage.setItem('padspec-scheme', scheme.value); } catch { /* not kept, then */ }
  });
  let kept = '';
  try { kept = localStorage.getItem('padspec-scheme') || ''; } catch { /* nothing is kept */ }
  paint(kept in named ? kept : '');

  for (const hue of hues) {
    hue.addEventListener('click', () => {
      hue.setAttribute('aria-pressed', String(hue.getAttribute('aria-pressed') !== 'true'));
      show();
    });
  }
  form.addEventListener('input', show);
  form.addEventListener('submit', (event) => event.preventDefault());
  clear.addEventListener('click', () => {
    const sort = wished().get('sort');
    location.hash = sort ? `sort=${sort}` : '';
    search.focus();
    take();
  });
  $('#print').addEventListener('click', () => print());
  addEventListener('hashchange', take);
  $$('.needs-script').forEach((one) => { one.hidden = false; });
  take();
})();
"""
