"""What Gramil is not: the line at the foot of every page, print, quote, label sheet and drawing."""

NOTICE = "Gramil advises and guarantees nothing. Local codes, the makers' manuals and licensed practice come first."
