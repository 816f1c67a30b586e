"""A row that is not there was touched or its card scanned: nothing is wrong with the work."""

from station.shop.acts import notice
from station.shop.words import say

NO_ROW = notice(say("There is nothing in that row"), say("Touch a row that is there."))
