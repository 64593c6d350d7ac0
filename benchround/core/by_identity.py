"""Remembering results by the very object they came from, not by what is in it."""

from __future__ import annotations


class Same:
    """Objects that count as equal only when each is the very same one.

    Seasons share what did not change between two records as the same objects, so a result kept by
    object is right for as long as the object is in use; comparing its contents would take longer
    than the result saves. Holding the objects keeps their identity from being given to others.
    """

    __slots__ = ("_hash", "objects")

    def __init__(self, *objects: object) -> None:
        self.objects = objects
        self._hash = hash(tuple(map(id, objects)))

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Same) or len(self.objects) != len(other.objects):
            return False
        return all(one is two for one, two in zip(self.objects, other.objects, strict=True))
