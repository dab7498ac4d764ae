"""How wide words are before anything is set; thousandths of the size, bold, measured once from the shipped font."""

FIRST = 32
WIDTHS = (
    *(312, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 440),
    *(659, 440, 579, 600, 624, 607, 626, 537, 624, 571, 272, 272, 569, 612, 569, 547),
    *(781, 678, 643, 658, 688, 597, 566, 718, 701, 424, 561, 663, 552, 858, 717, 746),
    *(629, 756, 650, 610, 607, 686, 644, 886, 685, 650, 618, 340, 440, 344, 582, 400),
    *(288, 552, 596, 510, 596, 563, 365, 593, 571, 300, 259, 555, 318, 882, 571, 576),
    *(596, 599, 376, 508, 376, 567, 530, 740, 539, 521, 505, 381, 254, 381, 537),
)
OTHER = 650  # a letter outside the table is taken to be this wide


def width_of(words: str, size: float) -> float:
    """Width of words set bold at a size, in the unit of the size; plain words are a little narrower."""
    codes = (ord(letter) - FIRST for letter in words)
    return sum(WIDTHS[code] if 0 <= code < len(WIDTHS) else OTHER for code in codes) * size / 1000


def wrapped(words: str, size: float, width: float) -> tuple[str, ...]:
    """Words broken into lines no wider than `width`, at spaces; a longer word stands alone on its line."""
    lines: list[str] = []
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer, size) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)
