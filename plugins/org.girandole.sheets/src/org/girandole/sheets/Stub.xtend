package org.girandole.sheets

class Stub { }
