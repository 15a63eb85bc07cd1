const LATIN = /[\u0020-\u007e\u00a0-\u00ff€‚„…‘’“”–—ŠšŽžŒœŸ]/u;

const STROKED = new Map(Object.entries({ Ł: 'L', ł: 'l', Đ: 'D', đ: 'd', Ħ: 'H', ħ: 'h', ı: 'i' }));

/** The standard fonts know western letters only: others lose their marks, or become a question mark. */
export function printable(text: string): string {
  return [...text.normalize('NFC')]
    .map((letter) => {
      if (LATIN.test(letter)) return letter;
      const bare = STROKED.get(letter) ?? letter.normalize('NFD').charAt(0);
      return LATIN.test(bare) ? bare : '?';
    })
    .join('');
}
