"""An instructor leads a class: the roster, who is named, the sitting as a pure core, and the report at its end."""
