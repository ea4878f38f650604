"""What the core asks of its two platforms: each question in Python here and in JavaScript beside.

A value's own sort and names are seen otherwise in Python and on the phone, so each has its own few
lines; whatever is decided by them is core.
"""
