#include "client/words/caution_words.h"

namespace suppertide {

QString CautionWords::sentence(v1::Caution caution) {
  switch (caution) {
    case v1::CAUTION_RAW_FLOUR:
      return tr("Don't taste raw dough or batter, and wash your hands and the bench after handling flour.");
    case v1::CAUTION_RAW_EGG:
      return tr("Keep raw egg cold until it is used, don't taste it, and wash what it touched.");
    case v1::CAUTION_HOT_OVEN:
      return tr("Use dry oven gloves, and say so before you open the oven.");
    case v1::CAUTION_HOT_STEAM:
      return tr("Stand back when steam comes out: it burns before you see it.");
    case v1::CAUTION_RAW_MEAT:
      return tr(
          "Keep it away from food that is ready to eat, and wash hands, board and knife before anything "
          "else.");
    case v1::CAUTION_CORE_TEMPERATURE:
      return tr("The clock doesn't prove that it is done: put a thermometer into the thickest part.");
    case v1::CAUTION_ROOM_TEMPERATURE_LIMIT:
      return tr(
          "Don't leave it standing out longer than the plan says; put it back in the fridge when in doubt.");
    case v1::CAUTION_THAW_IN_FRIDGE:
      return tr("Thaw it in the fridge on a tray, not on the counter.");
    case v1::CAUTION_COOL_QUICKLY:
      return tr("Spread it in shallow dishes so that it gets cold fast, then put it in the fridge.");
    case v1::CAUTION_ALLERGEN_CONTACT:
      return tr(
          "A guest must not have what is in this: use clean boards, knives and pans, and keep it apart.");
    case v1::CAUTION_HOT_FAT:
      return tr("Stay with it, and never put water on burning fat: cover it.");
    case v1::CAUTION_REHEAT_THROUGH:
      return tr("Heat it until it steams in the middle, once, and don't keep it after.");
    default:
      return tr("Read the recipe's own caution.");
  }
}

}  // namespace suppertide
