"""Kills, crashes, damage and failing disks, each in a short version and in a long one.

``python -m tests.durability`` runs the long ones and prints what was tried.
"""
