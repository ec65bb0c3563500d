"""Opens workbooks with openpyxl and tells what it finds, as JSON: for each file its sheets, and of each sheet the cells
that hold anything (row and column from 0, the number, text or formula, the stored value of a formula) and the merged
ranges. A file it cannot open has a fault instead. Usage: second_reader.py FOLDER; reads every .xlsx in it."""
import datetime
import json
import pathlib
import sys

import openpyxl


def plain(value):
    if isinstance(value, (datetime.datetime, datetime.date)):
        day = value.date() if isinstance(value, datetime.datetime) else value
        return (day - datetime.date(1899, 12, 30)).days
    return value


def read(path):
    formulas = openpyxl.load_workbook(path)
    values = openpyxl.load_workbook(path, data_only=True)
    sheets = []
    for sheet, stored in zip(formulas.worksheets, values.worksheets):
        cells = []
        for row in sheet.iter_rows():
            for cell in row:
                if cell.value not in (None, ""):
                    held = stored.cell(cell.row, cell.column).value
                    cells.append([cell.row - 1, cell.column - 1, plain(cell.value), plain(held)])
        merged = [str(one) for one in sheet.merged_cells.ranges]
        sheets.append({"name": sheet.title, "cells": cells, "merged": merged})
    return {"sheets": sheets}


found = {}
for path in sorted(pathlib.Path(sys.argv[1]).glob("*.xlsx")):
    try:
        found[path.name] = read(path)
    except Exception as fault:  # whatever it is, it is told
        found[path.name] = {"fault": repr(fault)}
json.dump(found, sys.stdout)
