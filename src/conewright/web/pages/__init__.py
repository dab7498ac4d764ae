"""The pages there are, in the order they are named at the head of each; must not know what they show."""

from conewright.web.pages.page import Page
from conewright.web.pages.tonight import TONIGHT

PAGES: tuple[Page, ...] = (TONIGHT,)
