"""Questions made from the knowledge: each kind of record yields its forms, and each is proved before it is asked."""

from assistant.practice.making.make import make_questions as make_questions
from assistant.practice.making.question import Expected as Expected
from assistant.practice.making.question import Key as Key
from assistant.practice.making.question import Question as Question
from assistant.practice.making.selecting import UnknownTopic as UnknownTopic
